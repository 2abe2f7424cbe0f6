/** A rehearsal tapped by hand on a controlled clock: what each tap means and measures, and the result. */
import { describe, expect, test } from "vitest";
import { buildCard } from "#lib/card/card.ts";
import { actEvent, type PlainAct } from "#lib/floor/acts.ts";
import { classLogUntil } from "#lib/floor/class-log.ts";
import { floorView, positionAt } from "#lib/floor/now.ts";
import { advancedTo, afterTap, beatAt, beatsOf, type Rehearsing, tapMeaning } from "#lib/floor/rehearsal.ts";
import { rehearsedTimes } from "#lib/floor/rehearsed.ts";
import { rehearsedSchema } from "#lib/floor/rehearsed-schema.ts";
import { seededRandom } from "#lib/order/random.ts";
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
// Opening 0-30, pike 30-90, pause 90-110, change 110-130, left 130-175, change 175-180, right 180-225, closing 225-265.
// Set-up of the pike 25.8-28, safety 28-30, start 30; set-up of the left side 110-112.8, its start 130.
const T0 = 5_000;
const at = (seconds: number) => T0 + seconds * 1000;
const begun: Rehearsing = { log: [{ type: "start", at: T0 }], taps: [] };
const tap = (was: Rehearsing, seconds: number) => afterTap(card, was, at(seconds));
const touch = (was: Rehearsing, act: PlainAct, seconds: number): Rehearsing => {
  const now = advancedTo(card, was, at(seconds));
  return { ...now, log: [...now.log, actEvent(card, now.log, act, at(seconds))] };
};
const meaning = (was: Rehearsing, seconds: number) => {
  const now = advancedTo(card, was, at(seconds));
  return tapMeaning(card, now, at(seconds));
};
const position = (was: Rehearsing, seconds: number) =>
  positionAt(card, advancedTo(card, was, at(seconds)).log, at(seconds)).position;

describe("one tap", () => {
  test("before a line's time marks it as said without measuring; before the class it means nothing", () => {
    expect(tapMeaning(card, { log: [], taps: [] }, T0)).toEqual({ kind: "nothing" });
    expect(meaning(begun, 10)).toEqual({ kind: "said-early", beat: 0 });
    expect(tap(begun, 10).taps).toEqual([{ at: at(10), beat: 0, seconds: null }]);
  });

  test("marks the line that is due, from when it was due to the tap", () => {
    expect(beatAt(card, begun, at(27))?.text).toBe("One light spring, forearms on the bars.");
    const one = tap(begun, 28.8);
    expect(one.taps).toEqual([{ at: at(28.8), beat: 0, seconds: expect.closeTo(3, 6) }]);
    // The next set-up line follows in one go: it begins when the first is tapped, early or late.
    const two = tap(one, 31);
    expect(two.taps[1]).toEqual({ at: at(31), beat: 1, seconds: expect.closeTo(2.2, 6) });
    const quick = tap(tap(begun, 26.8), 27.5);
    expect(quick.taps[1]?.seconds).toBeCloseTo(0.7, 6);
  });

  test("marks a late line before those that have become due meanwhile", () => {
    expect(beatAt(card, begun, at(50))?.kind).toBe("setup");
    const late = tap(tap(tap(begun, 50), 52), 54);
    expect(late.taps.map(({ beat }) => beat)).toEqual([0, 1, 2]);
    expect(late.taps[2]?.seconds).toBeCloseTo(2, 6);
  });
});

/** All lines up to the change to the left side, each said a second late. */
const upToChange = beatsOf(card)
  .slice(0, 6)
  .reduce((was, beat) => tap(was, Math.max(beat.from + 1, 28)), begun);

describe("a change", () => {
  test("ends with the tap that marks the set-up as done, early or late", () => {
    const said = tap(upToChange, 114);
    expect(said.taps.at(-1)).toMatchObject({ beat: 6, seconds: expect.closeTo(4, 6) });
    expect(meaning(said, 120)).toEqual({ kind: "set-up" });
    const early = tap(said, 121);
    expect(position(early, 121)).toBeCloseTo(130, 6);
    expect(rehearsedTimes(card, early).changes).toEqual([
      { item: "row-left", after: "pike-1", planned: 20, estimate: 17, took: 11 },
    ]);

    expect(position(said, 139), "it waits at its end").toBeCloseTo(129.999, 6);
    expect(floorView(card, advancedTo(card, said, at(139)).log, at(139))).toMatchObject({
      phase: "change",
      held: true,
    });
    const late = tap(said, 140);
    expect(position(late, 140)).toBeCloseTo(130, 6);
    expect(position(late, 150)).toBeCloseTo(140, 6);
    expect(rehearsedTimes(card, late).changes).toMatchObject([{ item: "row-left", took: 30 }]);
  });

  test("waits even if nobody looked for a minute, and its line is measured meanwhile", () => {
    const said = tap(upToChange, 170);
    expect(said.taps.at(-1)).toMatchObject({ beat: 6, seconds: expect.closeTo(60, 6) });
    const done = tap(said, 172);
    expect(rehearsedTimes(card, done).changes).toMatchObject([{ item: "row-left", took: 62 }]);
  });

  test("does not count the coach's holds; resuming while it waits keeps it waiting", () => {
    const rested = touch(touch(tap(upToChange, 114), "hold", 115), "resume", 145);
    const done = tap(rested, 150);
    expect(rehearsedTimes(card, done).changes).toMatchObject([{ item: "row-left", took: 10 }]);
    const waiting = touch(tap(upToChange, 114), "resume", 135);
    expect(position(waiting, 138)).toBeCloseTo(129.999, 6);
    expect(position(tap(waiting, 140), 141)).toBeCloseTo(131, 6);
  });

  test("done twice counts as done last", () => {
    const once = tap(tap(upToChange, 114), 121);
    const back = touch(once, "back", 122); // from the first second of the left side: to the pause
    expect(position(back, 122)).toBe(90);
    const again = tap(back, 122 + 20 + 5);
    expect(again.taps.at(-1)?.beat).toBe(6);
    expect(rehearsedTimes(card, tap(again, 122 + 20 + 16)).changes).toMatchObject([{ item: "row-left", took: 16 }]);
  });

  test("is left out when it was not reached or the class ended in it", () => {
    expect(rehearsedTimes(card, upToChange).changes).toEqual([]);
    expect(rehearsedTimes(card, touch(tap(upToChange, 114), "end", 118)).changes).toEqual([]);
    expect(tap(touch(upToChange, "end", 112), 113)).toEqual(advancedTo(card, touch(upToChange, "end", 112), at(113)));
  });
});

describe("a whole rehearsal", () => {
  const random = seededRandom(7);
  /** Taps some time after each line or set-up is due, to the end of the class. */
  function through(): Rehearsing {
    let was = begun;
    for (let s = 0; s < 400; s += 0.5) {
      was = advancedTo(card, was, at(s));
      const now = tapMeaning(card, was, at(s));
      if ((now.kind === "said" && now.seconds > 2 + random()) || (now.kind === "set-up" && random() < 0.05)) {
        was = tap(was, s);
      }
    }
    return was;
  }
  const done = through();

  test("has every line and every change, in order, and goes to its end", () => {
    const { changes, lines } = rehearsedTimes(card, done);
    expect(lines).toHaveLength(12);
    expect(lines.map(({ text }) => text)).toEqual(beatsOf(card).map(({ text }) => text));
    for (const line of lines) expect(line.took).toBeGreaterThan(1.9);
    expect(changes.map(({ item }) => item)).toEqual(["row-left", "row-right"]);
    expect(rehearsedSchema.parse({ changes, lines })).toEqual({ changes, lines });
  });

  test("writes a class log with the changes of the rehearsal", () => {
    const of = { sessionId: "b".repeat(32), kind: "rehearsal", clock: { mono: 0, wall: 0 } } as const;
    const log = classLogUntil(card, done.log, at(400), of);
    expect(log).toMatchObject({ kind: "rehearsal", whole: true });
    for (const { item, took } of rehearsedTimes(card, done).changes) {
      const row = log?.rows.find((r) => r.phase === "change" && r.item === item);
      expect((row?.took ?? 0) + (row?.held ?? 0)).toBeCloseTo(took, 0);
    }
  });
});
