/** The balance of a small class, worked out by hand from the definition of the plan file format ("Balance"). */
import { describe, expect, it } from "vitest";
import { balance } from "#lib/balance/balance.ts";
import type { PlanItem } from "#lib/plan/schema.ts";
import { exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";

/*
 * item         side         s    weights                        longest
 * row          left        60    upper-back 1, biceps 0.5       60
 * heading      does not break a stretch
 * row          right       40    the same                       60 + 40 = 100
 * press        both        50    chest 1, triceps 0.5           upper-back breaks: weight 0
 * row          alternating 30                                   30
 * pause        breaks
 * row          left        90                                   90
 *
 * upper-back 60 + 40 + 30 + 90 = 220; left 60 + 15 + 90 = 165; right 40 + 15 = 55
 * biceps     half of that: 110; 82.5; 27.5
 * chest 50; 25; 25   triceps 25; 12.5; 12.5      all groups 220 + 110 + 50 + 25 = 405
 */
const items: PlanItem[] = [
  exampleMove("a", { move: "row", side: "left", seconds: 60 }),
  { id: "h", kind: "heading", title: "" },
  exampleMove("b", { move: "row", side: "right", seconds: 40 }),
  exampleMove("c", { move: "press", seconds: 50, springs: { light: 2 } }),
  exampleMove("d", { move: "row", side: "alternating", seconds: 30, springs: { light: 2 } }),
  { id: "p", kind: "pause", seconds: 10 },
  exampleMove("e", { move: "row", side: "left", seconds: 90 }),
];

describe("balance", () => {
  const answer = balance(examplePlan(items));

  it("weighs seconds per group and side", () => {
    expect(answer.groups).toMatchObject({
      "upper-back": { seconds: 220, left: 165, right: 55 },
      biceps: { seconds: 110, left: 82.5, right: 27.5 },
      chest: { seconds: 50, left: 25, right: 25 },
      triceps: { seconds: 25, left: 12.5, right: 12.5 },
    });
    expect(Object.keys(answer.groups)).toHaveLength(4);
  });

  it("gives shares of the sum over all groups", () => {
    expect(answer.groups["upper-back"]?.share).toBeCloseTo(220 / 405, 8);
    expect(Object.values(answer.groups).reduce((sum, g) => sum + g.share, 0)).toBeCloseTo(1, 8);
  });

  it("adds up push and pull by the pattern of the move, unweighted", () => {
    expect(answer.push).toBe(50);
    expect(answer.pull).toBe(220);
  });

  it("finds the longest stretch: a heading does not break it, a pause and another muscle do", () => {
    expect(answer.longest["upper-back"]).toEqual({ seconds: 100, items: ["a", "b"] });
    // biceps at 0.5 is just enough to count as worked
    expect(answer.longest.biceps).toEqual({ seconds: 100, items: ["a", "b"] });
    expect(answer.longest.chest).toEqual({ seconds: 50, items: ["c"] });
  });

  it("counts changes of springs, facing and position between neighbouring moves", () => {
    // springs: b to c, d to e; facing: b (back) to c (front), c to d (back); all kneel
    expect(answer.setups).toEqual({ springChanges: 2, facingChanges: 2, positionChanges: 0 });
  });

  it("counts the seconds of every direction of the spine, both for a move with two", () => {
    const moves = {
      bend: { ...exampleMoves.squat, spine: ["flexion" as const] },
      reach: { ...exampleMoves.squat, spine: ["rotation" as const, "extension" as const] },
      plain: exampleMoves.squat,
    };
    const rows = [
      exampleMove("a", { move: "bend", seconds: 60 }),
      exampleMove("b", { move: "reach", seconds: 40 }),
      exampleMove("c", { move: "bend", seconds: 30 }),
      exampleMove("d", { move: "plain", seconds: 50 }),
    ];
    expect(balance(examplePlan(rows, { moves })).spine).toEqual({ flexion: 90, rotation: 40, extension: 40 });
  });

  it("finds the longest stretches on the wrists and on the knees, broken like those of a muscle", () => {
    // wrists: plank 45 + 45, a pause, plank 60. Knees: row and press kneel, 60 + 40 + 50 + 30; after the pause 90.
    const planks = [
      exampleMove("p", { move: "plank", seconds: 45 }),
      { id: "h", kind: "heading" as const, title: "On" },
      exampleMove("q", { move: "plank", seconds: 45 }),
      { id: "rest", kind: "pause" as const, seconds: 5 },
      exampleMove("r", { move: "plank", seconds: 60 }),
      exampleMove("s", { seconds: 200 }),
    ];
    const planked = balance(examplePlan(planks));
    expect(planked.onWrists).toEqual({ seconds: 90, items: ["p", "q"] });
    expect(planked.onKnees).toBeUndefined();
    expect(answer.onWrists).toBeUndefined();
    expect(answer.onKnees).toEqual({ seconds: 180, items: ["a", "b", "c", "d"] });
  });

  it("leaves out a stretch below half weight, and an unknown move", () => {
    const weak = { ...exampleMoves.squat, muscles: { calves: 0.49 } };
    const plan = examplePlan([exampleMove("a"), exampleMove("x", { move: "gone" })], { moves: { squat: weak } });
    expect(balance(plan)).toMatchObject({ groups: { calves: { share: 1 } }, longest: {}, push: 0 });
  });
});
