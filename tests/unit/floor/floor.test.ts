/** The floor's clock: a pure function of what happened and the time, which counts no ticks. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { buildCard } from "#lib/card/card.ts";
import { type FloorEvent, type FloorLog, rebaseLog, sleptBetween, sleptLog } from "#lib/floor/log.ts";
import { floorView, positionAt } from "#lib/floor/now.ts";
import { floorClass } from "#lib/floor/view.ts";
import { samplePlan } from "../card/sample-plan.ts";

const card = buildCard({
  studio: { name: "Tholepin Strength", town: "Port Ellery" },
  planId: "rows",
  number: 1,
  room: { id: "harbour", name: "Harbour room" },
  plan: samplePlan(),
  issuedAt: 0,
  expiresAt: 86_400_000,
});
const cls = floorClass(card);
const T0 = 5_000_000;
const started: FloorLog = [{ type: "start", at: T0 }];
const at = (seconds: number, log: FloorLog = started) => floorView(card, log, T0 + seconds * 1000);

describe("a class that runs as planned (times worked by hand)", () => {
  // Opening 0-30, pike 30-90, pause 90-110, change 110-130, left 130-175, change 175-180, right 180-225, closing 225-265.
  test.each([
    [-1, "waiting", null, 0],
    [0, "opening", null, 30],
    [29.999, "opening", null, 1],
    [30, "work", "pike-1", 60],
    [89.2, "work", "pike-1", 1],
    [90, "pause", "rest", 20],
    [110, "change", "row-left", 20],
    [130, "work", "row-left", 45],
    [177, "change", "row-right", 3],
    [180, "work", "row-right", 45],
    [225, "closing", null, 40],
    [264.5, "closing", null, 1],
    [265, "done", null, 0],
    [9999, "done", null, 0],
  ])("at %d s: %s", (seconds, phase, item, left) => {
    const view = at(seconds);
    expect([view.phase, view.item?.id ?? null, view.secondsLeft]).toEqual([phase, item, left]);
  });

  test("says what is next and what to change", () => {
    expect(at(10).next).toMatchObject({ id: "pike-1", name: "Forearm plank to pike" });
    expect(at(40).next).toMatchObject({ kind: "pause", name: "Sip of water" });
    const next = at(100).next;
    expect(next?.changes.map((change) => change.words)).toEqual([
      "carriage home",
      "take off one light",
      "put on one heavy",
      "face the back",
      "kneel",
      "left side",
      "feet on the carriage",
      "take one handle",
    ]);
    expect(next?.acts).toEqual(next?.changes);
    expect(next?.nowOn).toBe("now on: one heavy");
    const right = at(140).next;
    expect(right?.acts.map(({ words }) => words)).toEqual([
      "springs stay",
      "put the handle down",
      "right side",
      "handle in the other hand",
    ]);
    expect(next?.springs).toMatchObject([{ id: "heavy", count: 1 }]);
    expect(at(200).next).toMatchObject({ kind: "closing" });
    expect(at(240).next).toBeNull();
  });

  test("counts three, two, one in the last three seconds, and only then", () => {
    expect([86.9, 87, 87.9, 88, 88.9, 89, 89.9, 90].map((s) => at(s).countIn)).toEqual([null, 3, 3, 2, 2, 1, 1, null]);
  });

  test("the heads-up begins 15 s before the end of a move", () => {
    expect([74.9, 75, 89.9, 90].map((s) => at(s).headsUp)).toEqual([false, true, true, false]);
  });

  test("numbers moves and pauses, names the block", () => {
    expect([at(0), at(40), at(100), at(120), at(240)].map((v) => [v.number, v.of])).toEqual([
      [0, 4],
      [1, 4],
      [2, 4],
      [3, 4],
      [4, 4],
    ]);
    expect(at(140).block).toBe("Pull --> and reach");
  });

  test("shows the current line, keeps it until the next one, and drops it with its item", () => {
    for (const cue of card.cues) {
      const middle = at((cue.from + cue.to) / 2);
      expect(middle.line).toEqual({ text: cue.text, kind: cue.kind, now: true });
    }
    expect(at(95).line).toBeNull();
    expect(at(0).line).toBeNull();
  });

  test("is right at once after the device slept", () => {
    expect(at(200)).toEqual(floorView(structuredClone(card), [...started], T0 + 200_000));
  });
});

describe("hold, next, back, end", () => {
  const event = (type: "hold" | "resume" | "next" | "back" | "end", seconds: number): FloorEvent => ({
    type,
    at: T0 + seconds * 1000,
  });

  test("a held class stands still and is late by exactly the hold", () => {
    const log = [...started, event("hold", 50), event("resume", 80)];
    expect(at(65, log)).toMatchObject({ held: true, elapsed: 50, phase: "work", secondsLeft: 40 });
    expect(at(65, log).lateBy).toBeCloseTo(15);
    expect(at(90, log)).toMatchObject({ held: false, elapsed: 60, lateBy: 30 });
  });

  test("next goes to the change, then to the move; back restarts the move, then goes to the one before", () => {
    const next = [...started, event("next", 40), event("next", 41), event("next", 42)];
    expect(at(40, next).item?.id).toBe("rest");
    expect(at(41, next)).toMatchObject({ phase: "change", elapsed: 110 });
    expect(at(42, next)).toMatchObject({ phase: "work", elapsed: 130 });
    expect(at(42, next).lateBy).toBeCloseTo(42 - 130);
    expect(at(150, [...started, event("back", 150)])).toMatchObject({ elapsed: 130 });
    expect(at(132, [...started, event("back", 132)])).toMatchObject({ elapsed: 90, phase: "pause" });
    expect(at(5, [...started, event("back", 5)])).toMatchObject({ elapsed: 0, phase: "opening" });
  });

  test("next while held stays held", () => {
    expect(at(60, [...started, event("hold", 40), event("next", 50)])).toMatchObject({ held: true, elapsed: 90 });
  });

  test("end is the end", () => {
    const log = [...started, event("end", 50), event("next", 60), { type: "start" as const, at: T0 + 70_000 }];
    expect(at(80, log)).toMatchObject({ phase: "done", elapsed: 50 });
  });

  test("nothing else counts before the start", () => {
    expect(floorView(card, [event("next", 0), event("hold", 1)], T0 + 5000).phase).toBe("waiting");
  });
});

describe("over an hour, on a clock that the test controls", () => {
  // Held for an hour in the middle, so that the whole hour lies within the class.
  const hour = 3600;
  const log: FloorLog = [
    ...started,
    { type: "hold", at: T0 + 60_000 },
    { type: "resume", at: T0 + 60_000 + hour * 1000 },
  ];

  test("[INV-15] shows the second of the clock, however rarely it is drawn", () => {
    for (const every of [100, 1000, 60_000]) {
      for (let ms = 0; ms <= (hour + 200) * 1000; ms += every) {
        const position = Math.max(Math.min(ms, 60_000), ms - hour * 1000) / 1000;
        expect(Math.abs(floorView(card, log, T0 + ms).elapsed - position)).toBeLessThan(0.1);
      }
    }
  });

  test("a tab drawn once a second and a device that slept seven minutes are right within 100 ms after one jump", () => {
    const sleptMs = 7 * 60_000;
    let now: FloorLog = log;
    let [mono, wall] = [T0, 1_800_000_000_000];
    const began = wall;
    let last = { mono, wall };
    let jump = 0;
    while (wall - began < 3_700_000) {
      const asleep = wall - began >= 1_000_000 && jump === 0;
      // An hour's drift of the wall clock against the other, 20 ms in all, is no sleep.
      wall += asleep ? sleptMs + 1000 : 1000.005;
      mono += 1000;
      const slept = sleptBetween(last, { mono, wall });
      last = { mono, wall };
      if (slept > 0) {
        now = sleptLog(now, mono, slept);
        jump = slept / 1000;
      }
    }
    expect(jump).toBeCloseTo(sleptMs / 1000, 1);
    // It slept while the class was held: the hold is longer, and the class is where it was.
    const through = (wall - began) / 1000;
    expect(Math.abs(floorView(card, now, mono).elapsed - (60 + through - 60 - hour))).toBeLessThan(0.1);
  });

  test("takes neither a tick nor a clock set back for a sleep", () => {
    const at0 = { mono: 0, wall: 1000 };
    expect(sleptBetween(at0, { mono: 1000, wall: 2300 })).toBe(0);
    expect(sleptBetween(at0, { mono: 1000, wall: -5000 })).toBe(0);
    expect(sleptBetween(at0, { mono: 1000, wall: 62_000 })).toBe(60_000);
  });
});

describe("for any log", () => {
  const gap = fc.integer({ min: 0, max: 60_000 });
  const moves = fc.array(
    fc.record({
      gap,
      type: fc.constantFrom("hold" as const, "resume" as const, "next" as const, "back" as const, "seek" as const),
      to: fc.integer({ min: -5, max: 300 }),
    }),
    { maxLength: 12 },
  );
  const build = (
    parts: readonly { gap: number; type: "hold" | "resume" | "next" | "back" | "seek"; to: number }[],
  ): FloorLog => {
    let now = T0;
    return [
      { type: "start", at: T0 },
      ...parts.map(({ gap: wait, type, to }): FloorEvent => {
        now += wait;
        return type === "seek" ? { type, at: now, to } : { type, at: now };
      }),
    ];
  };

  test("hold and resume shift everything after them by exactly the held time", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 265_000 }),
        fc.integer({ min: 1, max: 600_000 }),
        gap,
        (held, lasting, later) => {
          const log: FloorLog = [
            ...started,
            { type: "hold", at: T0 + held },
            { type: "resume", at: T0 + held + lasting },
          ];
          const shifted = floorView(card, log, T0 + held + lasting + later);
          const plain = floorView(card, started, T0 + held + later);
          // Sums of decimals differ in their last bits; what is shown must not.
          const rough = { lateBy: 0, elapsed: 0, left: 0, progress: 0 };
          expect({ ...shifted, ...rough }).toEqual({ ...plain, ...rough });
          expect(shifted.elapsed).toBeCloseTo(plain.elapsed, 6);
          if (shifted.phase !== "done") expect(shifted.lateBy).toBeCloseTo(lasting / 1000);
        },
      ),
    );
  });

  test("between events time never jumps and never runs faster than the clock", () => {
    fc.assert(
      fc.property(moves, gap, fc.integer({ min: 1, max: 5000 }), (parts, after, dt) => {
        const log = build(parts);
        const now = (log.at(-1)?.at ?? T0) + after;
        const [a, b] = [floorView(card, log, now), floorView(card, log, now + dt)];
        expect(b.elapsed - a.elapsed).toBeGreaterThanOrEqual(0);
        expect(b.elapsed - a.elapsed).toBeLessThanOrEqual(dt / 1000 + 1e-9);
        expect(a.elapsed + a.left).toBeCloseTo(265);
        if (a.phase === b.phase && a.item?.id === b.item?.id) {
          expect(a.secondsLeft - b.secondsLeft).toBeLessThanOrEqual(Math.ceil(dt / 1000));
          expect(b.secondsLeft).toBeLessThanOrEqual(a.secondsLeft);
        }
      }),
    );
  });

  test("next and back land on the start of a step", () => {
    const starts = new Set([...cls.steps.map((step) => step.from), 265]);
    fc.assert(
      fc.property(moves, fc.constantFrom("next" as const, "back" as const), gap, (parts, type, wait) => {
        const before = build(parts);
        const now = (before.at(-1)?.at ?? T0) + wait;
        const { position } = positionAt(card, [...before, { type, at: now }], now);
        expect([...starts].some((start) => Math.abs(start - position) < 1e-9)).toBe(true);
      }),
    );
  });

  test("[INV-15] a reloaded page goes on as if it had never been away", () => {
    fc.assert(
      fc.property(moves, gap, gap, (parts, until, away) => {
        const log = build(parts);
        const saved = (log.at(-1)?.at ?? T0) + until;
        const again = rebaseLog(log, { mono: saved, wall: 1_000_000 }, { mono: 77, wall: 1_000_000 + away });
        expect(floorView(card, again, 77).elapsed).toBeCloseTo(floorView(card, log, saved + away).elapsed, 6);
      }),
    );
  });

  test("a device whose clock slept too stands where it was, late by the sleep", () => {
    fc.assert(
      fc.property(moves, gap, fc.integer({ min: 1, max: 600_000 }), (parts, after, slept) => {
        const log = build(parts);
        const now = (log.at(-1)?.at ?? T0) + after;
        const [before, woken] = [floorView(card, log, now), floorView(card, sleptLog(log, now, slept), now)];
        expect(woken.elapsed).toBeCloseTo(before.elapsed, 6);
        expect(woken.held).toBe(before.held);
        if (woken.phase !== "done") expect(woken.lateBy - before.lateBy).toBeCloseTo(slept / 1000, 6);
      }),
    );
  });
});
