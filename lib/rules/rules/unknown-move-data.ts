import { itemName } from "#lib/plan/format.ts";
import { defineRule } from "../define/define-rule.ts";
import { exampleMove, exampleMoves, examplePlan } from "../define/example-plan.ts";
import { limits } from "../define/limit-fields.ts";
import type { Found, RuleExamples } from "../define/types.ts";

/** Must: nothing else about such an item can be checked, its cautions least of all. */
export const unknownMoveData = defineRule({
  id: "unknown-move-data",
  reads: "item",
  title: "A move's data are missing",
  why: "Without the move's set-up, muscles and cautions nothing about the item can be checked, nor told to anybody.",
  fix: "Choose a move of the library, or complete its entry there.",
  level: "must",
  source: "the studio's library",
  limits: limits({}),
  messages: {
    unknown: "The move {moveId} is not in the library: choose another, or put it back.",
    "no-muscles":
      "{itemName}: the library names no muscles, so the balance of the class leaves it out; complete it there.",
  },
  check({ plan, moves }) {
    return moves.flatMap(({ item, move: library }): Found<"unknown" | "no-muscles">[] => {
      const items = [item.id];
      if (!library) return [{ message: "unknown", items, values: { moveId: item.move } }];
      if (Object.values(library.muscles).some((weight) => weight > 0)) return [];
      const values = { itemName: itemName(plan, item) };
      return [{ message: "no-muscles", items, values, level: "info" }];
    });
  },
});

export const unknownMoveDataExamples = (): RuleExamples => ({
  pass: [
    { say: "a move of the plan", plan: examplePlan([exampleMove("a")]) },
    { say: "no items at all", plan: examplePlan([]) },
  ],
  fail: [
    { say: "a move nobody knows", plan: examplePlan([exampleMove("a", { move: "gone" })]), expect: ["unknown"] },
    {
      say: "a move with no muscles",
      plan: examplePlan([exampleMove("a")], { moves: { squat: { ...exampleMoves.squat, muscles: {} } } }),
      expect: ["no-muscles"],
    },
  ],
});
