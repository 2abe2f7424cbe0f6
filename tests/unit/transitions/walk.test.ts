/** The walk through set-ups: what is held, where the carriage is, what must be let go, as one goes through a class. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Move, PlanItem } from "#lib/plan/schema.ts";
import { exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";
import { walkSetups } from "#lib/transitions/walk.ts";
import { damagedPlan } from "#tests/support/plan-arbitrary.ts";

const moves: Record<string, Move> = {
  ...exampleMoves,
  crossed: { ...exampleMoves.press, hands: "handles-crossed" },
  lowering: { ...exampleMoves.squat, position: "supine", feet: "cable-strap" },
  floor: { ...exampleMoves.squat, station: "floor", feet: "floor", resistance: "bodyweight" },
  kneel: { ...exampleMoves.squat, position: "kneeling", resistance: "bodyweight" },
  still: { ...exampleMoves.squat, travelMm: [0, 0] },
};
const steps = (...items: PlanItem[]) => walkSetups(examplePlan(items, { moves }));
const pause = (seconds: number): PlanItem => ({ id: `p${seconds}`, kind: "pause", seconds });

describe("the walk through set-ups", () => {
  it("knows what hands and feet hold at each move", () => {
    const states = steps(
      exampleMove("a"),
      exampleMove("b", { move: "press" }),
      exampleMove("c", { move: "crossed" }),
      exampleMove("d", { move: "row", side: "left" }),
      exampleMove("e", { move: "lowering", side: "right" }),
    ).map(({ state }) => state);
    expect(states.map((s) => s.handles)).toEqual([0, 2, 2, 1, 0]);
    expect(states.map((s) => s.crossed)).toEqual([false, false, true, false, false]);
    expect(states.map((s) => s.strap)).toEqual([null, null, null, null, "cable-strap"]);
    expect(states.map((s) => s.side)).toEqual([null, null, null, "left", "right"]);
  });

  it("says what must be let go only where the hand or the foot is needed", () => {
    const at = (from: string, to: string) =>
      steps(exampleMove("a", { move: from, side: "left" }), exampleMove("b", { move: to, side: "left" })).at(-1)?.letGo;
    // handleDown 1 s each, strapOff 2 s: the defaults of the plan file format.
    expect(at("press", "plank")).toEqual({ handles: 2, strap: null, seconds: 2 });
    expect(at("row", "plank")).toEqual({ handles: 1, strap: null, seconds: 1 });
    expect(at("press", "squat")).toMatchObject({ handles: 0 });
    expect(at("press", "row")).toMatchObject({ handles: 0 });
    expect(at("lowering", "squat")).toEqual({ handles: 0, strap: "cable-strap", seconds: 2 });
    expect(at("lowering", "lowering")).toMatchObject({ strap: null });
  });

  it("knows whether the carriage may be out as a change begins", () => {
    const carriage = (first: string, ...between: PlanItem[]) =>
      steps(exampleMove("a", { move: first }), ...between, exampleMove("b")).at(-1)?.carriage;
    expect(steps(exampleMove("a"))[0]?.carriage).toBe("home");
    expect(carriage("squat")).toBe("out");
    expect(carriage("still")).toBe("home");
    expect(carriage("floor")).toBe("home");
    expect(carriage("kneel")).toBe("unknown");
    expect(carriage("squat", pause(20))).toBe("unknown");
    expect(carriage("still", pause(20))).toBe("home");
  });

  it("counts planned seconds and pauses as time for the change, a heading as nothing", () => {
    const [, step] = steps(
      exampleMove("a", { move: "press" }),
      pause(20),
      { id: "h", kind: "heading", title: "On" },
      pause(5),
      exampleMove("b", { move: "plank", transitionSeconds: 3 }),
    );
    expect(step).toMatchObject({
      seconds: 28,
      pauses: [{ seconds: 20 }, { seconds: 5 }],
      before: { item: { id: "a" } },
    });
  });

  it("skips an unknown move", () => {
    const walked = steps(
      exampleMove("a", { move: "press" }),
      exampleMove("x", { move: "gone" }),
      exampleMove("b", { move: "plank" }),
    );
    expect(walked.map(({ item }) => item.id)).toEqual(["a", "b"]);
    expect(walked.at(-1)?.letGo.handles).toBe(2);
  });

  it("never throws", () => {
    fc.assert(
      fc.property(damagedPlan, (plan) => {
        const walked = walkSetups(plan).map((step) => step.item);
        expect(walked).toEqual(plan.items.filter((item) => walked.some((one) => one === item)));
      }),
      { seed: 31, numRuns: 200 },
    );
  });
});
