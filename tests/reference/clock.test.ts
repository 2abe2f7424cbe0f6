/**
 * A short class on the clock, worked out by hand from the definition
 *   start[i] = opening + sum over j < i of (transition[j] + work[j]) + transition[i];  total = last end + closing
 * (plan file format, "Clock"). The working stands in the table.
 */
import { describe, expect, it } from "vitest";
import { classClock } from "#lib/clock/clock.ts";
import type { PlanItem } from "#lib/plan/schema.ts";
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
const items: PlanItem[] = [
  { id: "h", kind: "heading", title: "Warm up" },
  exampleMove("squat", { seconds: 45 }),
  exampleMove("row-l", { move: "row", side: "left", seconds: 60, springs: { light: 2 } }),
  { id: "rest", kind: "pause", seconds: 20 },
  exampleMove("row-r", { move: "row", side: "right", seconds: 60, springs: { light: 2 } }),
  exampleMove("plank", { move: "plank", seconds: 40, springs: { light: 1 }, transitionSeconds: 0 }),
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
    const plan = examplePlan([exampleMove("a", { seconds: 0.1 + 0.2 }), exampleMove("b", { seconds: 0.4 })], {
      openingSeconds: 0,
      closingSeconds: 0,
    });
    const clock = classClock(plan);
    expect(clock.rows.map((r) => r.end)).toEqual([0.3, 0.7]);
    expect(clock.total).toBe(0.7);
  });

  it("skips an item whose move is unknown: the next is compared with the last known set-up", () => {
    const {
      rows: [, , third],
    } = classClock(examplePlan([exampleMove("a"), exampleMove("x", { move: "gone" }), exampleMove("b")]));
    expect(third?.transition).toEqual({ planned: null, estimate: 0, actions: {} });
  });

  it("of an empty plan is its opening and closing", () => {
    expect(classClock(examplePlan([]))).toEqual({ rows: [], total: 120 });
  });
});
