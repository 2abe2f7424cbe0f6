import { itemName, moveName } from "#lib/plan/format.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { bothSides, exampleMove, examplePlan } from "../define/example-plan.ts";
import { limits } from "../define/limit-fields.ts";
import type { RuleExamples } from "../define/types.ts";
import { sideSums } from "../select/sides.ts";

/** Must fix: a forgotten side is the mistake that classes complain of most. */
export const missingSide = defineRule({
  id: "missing-side",
  reads: "times",
  title: "One side is missing",
  why: "A move done on one side only leaves the other untrained, and the class expects both.",
  fix: "Add the other side, or take this one out.",
  level: "must",
  source: COMMON_PRACTICE,
  limits: limits({}),
  messages: {
    missing:
      "{moveName}: {seconds} on the {side} and nothing on the {otherSide}. Add the {otherSide}, or take the {side} out.",
    unsaid: "{itemName}: planned for both sides at once, but done one side at a time. Make it a left and a right.",
  },
  check(ctx) {
    const missing = sideSums(ctx).flatMap(({ first, left, right, leftSeconds, rightSeconds }) => {
      if (left.length > 0 && right.length > 0) return [];
      const side = left.length > 0 ? "left" : "right";
      const values = {
        moveName: moveName(ctx.plan, first),
        side,
        otherSide: side === "left" ? "right" : "left",
        seconds: leftSeconds + rightSeconds,
      };
      return [{ message: "missing" as const, items: [...left, ...right].map((item) => item.id), values }];
    });
    const unsaid = ctx.moves.flatMap(({ item, move: library }) => {
      if (library?.sides !== "each" || item.side !== "both") return [];
      const values = { itemName: itemName(ctx.plan, item) };
      return [{ message: "unsaid" as const, items: [item.id], values, level: "look" as const }];
    });
    return [...missing, ...unsaid];
  },
});

export const missingSideExamples = (): RuleExamples => ({
  pass: [
    { say: "left and right", plan: examplePlan(bothSides("row")) },
    { say: "a move of both sides", plan: examplePlan([exampleMove("a")]) },
  ],
  fail: [
    { say: "left only", plan: examplePlan(bothSides("row").slice(0, 1)), expect: ["missing"] },
    { say: "right only", plan: examplePlan(bothSides("row").slice(1)), expect: ["missing"] },
    {
      say: "one item for a one-sided move",
      plan: examplePlan([exampleMove("a", { move: "row" })]),
      expect: ["unsaid"],
    },
  ],
});
