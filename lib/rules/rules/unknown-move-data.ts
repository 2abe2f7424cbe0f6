import { itemName } from "#lib/plan/format.ts";
import { defineRule } from "../define/define-rule.ts";
import { exampleMove, exampleMoves, examplePlan } from "../define/example-plan.ts";
import { limits } from "../define/limit-fields.ts";
import type { Found, RuleExamples } from "../define/types.ts";

/** Must fix: nothing else about such an item can be checked, not even its cautions. */
export const unknownMoveData = defineRule({
  id: "unknown-move-data",
  reads: "item",
  title: "A move is not in the library, or lacks data there",
  why: "Without the move's set-up, muscles and cautions nothing about the item can be checked or announced.",
  fix: "Choose a move from the library, or complete its entry there.",
  level: "must",
  source: "the studio's library",
  limits: limits({}),
  messages: {
    unknown: "The move {moveId} is not in the library. Choose another, or put it back.",
    "no-muscles":
      "{itemName}: the library names no muscles for it, so the balance leaves it out. Complete it in the library.",
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
    {
      say: "a move that is not in the library",
      plan: examplePlan([exampleMove("a", { move: "gone" })]),
      expect: ["unknown"],
    },
    {
      say: "a move without muscles",
      plan: examplePlan([exampleMove("a")], { moves: { squat: { ...exampleMoves.squat, muscles: {} } } }),
      expect: ["no-muscles"],
    },
  ],
});
