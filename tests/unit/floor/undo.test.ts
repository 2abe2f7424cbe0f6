/** Undoing slips of the finger, times worked by hand; and "15 s more" wherever the class is. */
import { describe, expect, test } from "vitest";
import { buildCard } from "#lib/card/card.ts";
import { actEvent, endOnTimeAt, retimeEvent } from "#lib/floor/acts.ts";
import { classLogUntil } from "#lib/floor/class-log.ts";
import { classLogSchema } from "#lib/floor/class-log-schema.ts";
import { extension } from "#lib/floor/extension.ts";
import { actOfKey, keysOfAct } from "#lib/floor/keys.ts";
import { type FloorEvent, type FloorLog, sleptLog } from "#lib/floor/log.ts";
import { floorNow, floorView, latenessAt, positionAt } from "#lib/floor/now.ts";
import { isFreshSkip, undoableAt } from "#lib/floor/undo.ts";
import { lineClassSchema } from "#lib/line/messages.ts";
import { classChanges } from "#lib/timings/class-changes.ts";
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
const T0 = 1_000_000;
const at = (seconds: number) => T0 + seconds * 1000;
const started: FloorLog = [{ type: "start", at: T0 }];
const touch = (
  log: FloorLog,
  type: "next" | "back" | "hold" | "resume" | "end" | "undo",
  seconds: number,
): FloorLog => [...log, actEvent(card, log, type, at(seconds))];
const more = (log: FloorLog, seconds: number): FloorLog => {
  const made = extension(card, log, 15, at(seconds));
  if (!made) throw new Error("it runs");
  return [...log, made.event];
};
const whatAt = (log: FloorLog, seconds: number) => undoableAt(card, log, at(seconds))?.what ?? null;

// Opening 0-30, pike 30-90, pause 90-110, change 110-130, left 130-175, change 175-180, right 180-225, closing 225-265.
describe("undo", () => {
  test("a skip by mistake: the move goes on where the real clock is, and nothing is late", () => {
    const skipped = touch(started, "next", 50);
    expect(floorView(card, skipped, at(50))).toMatchObject({ phase: "pause", lateBy: -40 });
    const undone = touch(skipped, "undo", 54);
    expect(positionAt(card, undone, at(54)).position).toBe(54);
    expect(floorView(card, undone, at(54))).toMatchObject({ phase: "work", secondsLeft: 36, lateBy: 0 });
    // What was shown before stays what was shown.
    expect(floorView(card, undone, at(53)).phase).toBe("pause");
    // Back alone would restart the move, 24 s late.
    const back = touch(touch(skipped, "back", 52), "back", 52.5);
    expect(positionAt(card, back, at(54)).position).toBeLessThan(35);
  });

  test("back, hold, go on, jump, end: each as if it had not happened", () => {
    const back = touch(touch(started, "back", 60), "undo", 65);
    expect(positionAt(card, back, at(65)).position).toBe(65);
    const held = touch(touch(started, "hold", 60), "undo", 65);
    expect(floorView(card, held, at(65))).toMatchObject({ held: false, elapsed: 65, lateBy: 0 });
    const goneOn = touch(touch(touch(started, "hold", 60), "resume", 62), "undo", 65);
    expect(floorView(card, goneOn, at(66))).toMatchObject({ held: true, elapsed: 60, lateBy: 6 });
    const ended = touch(touch(started, "end", 60), "undo", 65);
    expect(floorView(card, touch(started, "end", 60), at(65)).phase).toBe("done");
    expect(floorView(card, ended, at(65))).toMatchObject({ phase: "work", elapsed: 65, lateBy: 0 });
    const jumped: FloorLog = [...started, { type: "seek", at: at(60), to: 150 }, { type: "undo", at: at(61) }];
    expect(positionAt(card, jumped, at(61)).position).toBe(61);
  });

  test("names what it would undo, one after the other, for twenty seconds; an end for ten", () => {
    const two = more(touch(started, "back", 40), 45);
    expect(whatAt(started, 1)).toBeNull();
    expect(whatAt(two, 46)).toBe("15 s more");
    expect(whatAt(touch(two, "undo", 47), 48)).toBe("back");
    expect(whatAt(touch(touch(two, "undo", 47), "undo", 48), 48)).toBeNull();
    const skipped = touch(started, "next", 50);
    expect([whatAt(skipped, 70), whatAt(skipped, 70.1)]).toEqual(["skip", null]);
    const ended = touch(started, "end", 50);
    expect([whatAt(ended, 60), whatAt(ended, 60.1)]).toEqual(["end", null]);
    // A skip that led out of the class is an end too.
    const out = touch(started, "next", 250);
    expect([whatAt(out, 260), whatAt(out, 260.1)]).toEqual(["skip", null]);
    const late = touch(touch(started, "hold", 10), "resume", 50);
    const answer = endOnTimeAt(card, late, at(60));
    if (!answer.possible) throw new Error("possible by hand");
    const onTime = [...late, retimeEvent(answer, at(60))];
    expect(whatAt(onTime, 61)).toBe("end on time");
    expect(latenessAt(card, touch(onTime, "undo", 61), at(61))).toBeCloseTo(40);
  });

  test("what a sleeping device wrote is not a touch, and nothing before it can be undone", () => {
    const skipped = touch(started, "next", 50);
    const woken = sleptLog(skipped, at(52), 5000);
    expect(undoableAt(card, woken, at(52))).toBeNull();
    expect(floorNow(card, [...woken, { type: "undo", at: at(52) }])).toBe(floorNow(card, woken));
    // Held by mistake and undone: the class runs, so it counts as held while the device slept.
    const runs = touch(touch(started, "hold", 50), "undo", 51);
    expect(
      sleptLog(runs, at(60), 5000)
        .slice(-2)
        .map(({ type }) => type),
    ).toEqual(["hold", "resume"]);
  });

  test("keys: U and Backspace; with two pedals, back right after a skip", () => {
    expect([actOfKey("u"), actOfKey("Backspace")]).toEqual(["undo", "undo"]);
    expect(keysOfAct("undo")).toBe("U, Backspace");
    const skipped = touch(started, "next", 50);
    const fresh = (seconds: number) => isFreshSkip(undoableAt(card, skipped, at(seconds)), at(seconds));
    expect([fresh(54), fresh(56)]).toEqual([true, false]);
    expect(isFreshSkip(undoableAt(card, touch(started, "hold", 50), at(51)), at(51))).toBe(false);
  });

  test("the class log: seconds as if the mistake had not happened, and a record that it did", () => {
    const of = { sessionId: "a".repeat(32), kind: "class", clock: { mono: T0, wall: 0 } } as const;
    const slipped = touch(touch(touch(touch(started, "next", 112), "undo", 118), "hold", 131), "resume", 136);
    const straight = touch(touch(started, "hold", 131), "resume", 136);
    const [log, plain] = [slipped, straight].map((one) => classLogUntil(card, one, at(400), of));
    if (!log || !plain) throw new Error("both began");
    expect(log.rows).toEqual(plain.rows);
    expect(log.undone).toEqual([{ act: "next", at: 112, after: 6 }]);
    expect(plain.undone).toBeUndefined();
    expect(classLogSchema.parse(log)).toEqual(log);
    // Without the undo, the skip would mean that the change took two seconds.
    expect(classChanges(card, log)).toEqual(classChanges(card, plain));
  });

  test("goes over the line", () => {
    const log = sleptLog(touch(more(touch(started, "next", 112), 115), "undo", 118), at(119), 5000);
    const edition = { planId: "rows", number: 1, hash: "a".repeat(64) };
    const cls = { session: "a".repeat(32), edition, title: "Rows", log };
    expect(lineClassSchema.parse(cls)).toEqual(cls);
  });
});

describe("15 s more", () => {
  const lengths: readonly [string, number, Partial<ReturnType<typeof floorView>>, string][] = [
    ["the opening", 10, { phase: "opening", secondsLeft: 35 }, "Opening: 45 s instead of 30 s."],
    ["a move", 40, { phase: "work", secondsLeft: 65 }, "Forearm plank to pike: 75 s instead of 60 s."],
    ["a pause", 95, { phase: "pause", secondsLeft: 30 }, "Sip of water: 35 s instead of 20 s."],
    [
      "a change",
      120,
      { phase: "change", secondsLeft: 25 },
      "Change to Kneeling one-arm row, left: 35 s instead of 20 s.",
    ],
    ["the closing", 230, { phase: "closing", secondsLeft: 50 }, "Closing: 55 s instead of 40 s."],
  ];
  test.each(lengths)("%s", (_where, seconds, view, words) => {
    const log = more(started, seconds);
    expect(floorView(card, log, at(seconds))).toMatchObject({ ...view, lateBy: 15, elapsed: seconds });
    expect(undoableAt(card, log, at(seconds))).toMatchObject({ what: "15 s more", did: words });
    const twice = more(log, seconds + 1);
    const to = Number(/: (\d+) s/.exec(words)?.[1]);
    // The signed plan's seconds, not those after the previous touch.
    expect(undoableAt(card, twice, at(seconds + 2))?.did).toBe(words.replace(`: ${to} s`, `: ${to + 15} s`));
    expect(floorView(card, touch(touch(twice, "undo", seconds + 3), "undo", seconds + 4), at(seconds + 4))).toEqual(
      floorView(card, started, at(seconds + 4)),
    );
  });

  test("a change made longer keeps its length when the rest is made to end on time", () => {
    const log = more(started, 120);
    const answer = endOnTimeAt(card, log, at(121));
    if (!answer.possible) throw new Error("possible by hand");
    const onTime: FloorEvent[] = [...log, retimeEvent(answer, at(121))];
    expect(latenessAt(card, onTime, at(121))).toBeCloseTo(0);
    expect(floorView(card, onTime, at(121))).toMatchObject({ phase: "change", secondsLeft: 24 });
  });
});
