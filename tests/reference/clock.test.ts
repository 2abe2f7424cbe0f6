/**
 * A short class on the clock, worked out by hand from the definition
 *   start[i] = opening + sum over j < i of (transition[j] + work[j]) + transition[i];  total = last end + closing
 * (plan file format, "Clock"). The working stands in the table. Nothing is told in it; what telling adds has a table of its own.
 */
import { describe, expect, it } from "vitest";
import { classClock } from "#lib/clock/clock.ts";
import type { MoveItem, PlanItem, ScriptLine } from "#lib/plan/schema.ts";
import { exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";

/*
 * item        change into it                                     from  start  end
 * heading     none                                                 60     60    60
 * squat 45    first move: 0                                        60     60   105
 * row l 60    off 0, on 1 x 3, home 2, turn 2 x 1.5 = 3,
 *             position 3, handle up 1.5, base 2 = 14.5 -> 15      105    120   180
 * pause 20    none of its own                                     180    180   200
 * row r 60    the pause does not matter: handle down 1, up 1.5,
 *             base 2 = 4.5 -> 5                                   200    205   265
 * plank 40    planned 0 replaces the estimate                     265    265   305
 * total       305 + closing 60                                                 365
 */
const silent = { script: [] };
const items: PlanItem[] = [
  { id: "h", kind: "heading", title: "Warm up" },
  exampleMove("squat", { seconds: 45, ...silent }),
  exampleMove("row-l", { move: "row", side: "left", seconds: 60, springs: { light: 2 }, ...silent }),
  { id: "rest", kind: "pause", seconds: 20 },
  exampleMove("row-r", { move: "row", side: "right", seconds: 60, springs: { light: 2 }, ...silent }),
  exampleMove("plank", { move: "plank", seconds: 40, springs: { light: 1 }, transitionSeconds: 0, ...silent }),
];

describe("the clock of a class", () => {
  const { rows, total } = classClock(examplePlan(items));

  it("starts and ends every item where the definition puts it", () => {
    expect(rows.map((r) => [r.item, r.transitionFrom, r.start, r.end])).toEqual([
      ["h", 60, 60, 60],
      ["squat", 60, 60, 105],
      ["row-l", 105, 120, 180],
      ["rest", 180, 180, 200],
      ["row-r", 200, 205, 265],
      ["plank", 265, 265, 305],
    ]);
    expect(total).toBe(365);
  });

  it("keeps the estimate and its actions next to a planned transition", () => {
    // row r to plank: off 1 x 2, home 2, turns 2 x 1.5 = 3, position 3, handle down 1, base 2 = 13
    expect(rows.at(-1)?.transition).toEqual({
      planned: 0,
      estimate: 13,
      telling: 0,
      actions: { springOff: 1, carriageHome: 1, quarterTurn: 2, positionChange: 1, handleDown: 1 },
    });
  });

  it("counts repetitions as work over one tempo cycle, and none for a hold", () => {
    // squat: 3 s out, 2 s back: 45 / 5 = 9; row the same: 60 / 5 = 12; a plank is held
    expect(rows.map((r) => r.reps)).toEqual([null, 9, 12, null, 12, null]);
  });

  it("adds the holds of a tempo to its cycle", () => {
    const tempo = { outSeconds: 2, outHoldSeconds: 1, backSeconds: 3, backHoldSeconds: 0.5 };
    const plan = examplePlan([exampleMove("a", { seconds: 13 })], {
      moves: { squat: { ...exampleMoves.squat, tempo } },
    });
    // 2 + 1 + 3 + 0.5 = 6.5; 13 / 6.5 = 2
    expect(classClock(plan).rows[0]?.reps).toBe(2);
  });

  it("counts a transition planned before the first move", () => {
    const {
      rows: [first],
    } = classClock(examplePlan([exampleMove("a", { transitionSeconds: 10 })]));
    expect(first).toMatchObject({ transitionFrom: 60, start: 70, end: 115, transition: { planned: 10, estimate: 0 } });
  });

  it("takes the plan's own opening and closing, and shows tenths without noise", () => {
    const plan = examplePlan(
      [exampleMove("a", { seconds: 0.1 + 0.2 }), exampleMove("b", { seconds: 0.4, ...silent })],
      {
        openingSeconds: 0,
        closingSeconds: 0,
      },
    );
    const clock = classClock(plan);
    expect(clock.rows.map((r) => r.end)).toEqual([0.3, 0.7]);
    expect(clock.total).toBe(0.7);
  });

  it("skips an item whose move is unknown: the next is compared with the last known set-up", () => {
    const {
      rows: [, , third],
    } = classClock(examplePlan([exampleMove("a"), exampleMove("x", { move: "gone" }), exampleMove("b")]));
    // Told is "one light, stand in the middle.": 8 syllables, 1.8 s.
    expect(third?.transition).toEqual({ planned: null, estimate: 0, telling: 2, actions: {} });
  });

  it("of an empty plan is its opening and closing", () => {
    expect(classClock(examplePlan([]))).toEqual({ rows: [], total: 120 });
  });
});

/*
 * A syllable a second and a pause of 2 s.
 *   "Same springs."                 2 syllables, 2 s
 *   "Same springs." "Stand tall."   2 + 2 and one pause of 2 between them: 6 s
 */
describe("what is told before a move", () => {
  const speech = { syllablesPerSecond: 1, pauseSeconds: 2 };
  const setup = (...texts: string[]): ScriptLine[] => texts.map((text) => ({ kind: "setup", text }));
  const toldIn = (second: Partial<MoveItem>, more: Parameters<typeof examplePlan>[1] = {}) => {
    const plan = examplePlan([exampleMove("a", silent), exampleMove("b", second)], { speech, ...more });
    const row = classClock(plan).rows[1];
    return row && { ...row.transition, lasts: row.start - row.transitionFrom };
  };

  it("lasts as long as its set-up lines with the pauses between them, and no pause after the last", () => {
    expect(toldIn({ script: setup("Same springs.") })).toMatchObject({ telling: 2, lasts: 2 });
    expect(toldIn({ script: setup("Same springs.", "Stand tall.") })).toMatchObject({ telling: 6, lasts: 6 });
    // A line without words is no line.
    expect(toldIn({ script: setup("Same springs.", " ... ", "Stand tall.") })).toMatchObject({ telling: 6, lasts: 6 });
  });

  it("is rounded up to a whole second", () => {
    // 4 syllables at 1.5 a second are 2.67 s, and a pause of 0.5: 3.17 s
    const slow = { speech: { syllablesPerSecond: 1.5, pauseSeconds: 0.5 } };
    expect(toldIn({ script: setup("Same springs.", "Stand tall.") }, slow)?.telling).toBe(4);
    // 3 syllables at 0.6 a second: exactly 5 s, however binary fractions put it
    expect(toldIn({ script: setup("Same two springs.") }, { speech: { syllablesPerSecond: 0.6 } })?.telling).toBe(5);
  });

  it("counts nothing but set-up lines", () => {
    const script: ScriptLine[] = (
      ["start", "breath", "form", "focus", "easier", "harder", "safety", "crew"] as const
    ).map((kind) => ({ kind, text: "Stand tall." }));
    expect(toldIn({ script })).toMatchObject({ telling: 0, lasts: 0 });
  });

  it("counts live fields with their words", () => {
    // "one light": 2; "squat": 1; "left": 1; "the close": 2; "forty five": 3; the slot of 20 minutes, "twenty": 2
    const all = setup("{springs} {move} {side} {next-move} {seconds-left} {minutes-left}");
    expect(toldIn({ script: all, side: "left" }, { lengthSeconds: 1200 })?.telling).toBe(11);
  });

  it("makes the change longer than doing it takes, or the other way round", () => {
    // off 1 x 2, home 2, base 2: 6 s to do
    const springs = {};
    expect(toldIn({ springs, script: setup("Same springs.") })).toMatchObject({ estimate: 6, telling: 2, lasts: 6 });
    const long = setup("Same springs.", "Stand tall.", "Feet wide.");
    // 6 syllables and two pauses: 10 s to tell
    expect(toldIn({ springs, script: long })).toMatchObject({ estimate: 6, telling: 10, lasts: 10 });
  });

  it("is replaced by a planned time, 0 included", () => {
    const script = setup("Same springs.", "Stand tall.");
    expect(toldIn({ script, transitionSeconds: 0 })).toMatchObject({ planned: 0, telling: 6, lasts: 0 });
    expect(toldIn({ script, transitionSeconds: 9 })).toMatchObject({ planned: 9, telling: 6, lasts: 9 });
  });

  it("takes no time before the first move, which is set up during the opening", () => {
    const plan = examplePlan([exampleMove("a", { script: setup("Same springs.") })], { speech });
    expect(classClock(plan).rows[0]).toMatchObject({ transitionFrom: 60, start: 60, transition: { telling: 0 } });
  });
});
