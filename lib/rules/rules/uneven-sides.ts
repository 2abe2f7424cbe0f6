import { moveName } from "#lib/plan/format.ts";
import { type SidePair, sidePairs } from "#lib/plan/lookup.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { bothSides, examplePlan } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import type { RuleExamples } from "../define/types.ts";
import { type SideSum, sideSums } from "../select/sides.ts";

/** Must fix: the class expects both sides to be the same. A move with one side only is left to `missing-side`. */
export const unevenSides = defineRule({
  id: "uneven-sides",
  reads: "times",
  title: "Left and right do not get the same time",
  why: "One side is trained less than the other, and everybody in the room notices.",
  fix: "Give both sides of the move the same time.",
  level: "must",
  source: COMMON_PRACTICE,
  limits: limits({
    maxDifferenceSeconds: numberLimit({ from: 0, to: 600, usual: 0, says: "Most that left and right may differ" }),
  }),
  messages: {
    uneven:
      "{moveName}: {leftSeconds} on the left and {rightSeconds} on the right. Give the {shortSide} {differenceSeconds} more.",
  },
  check(ctx, { maxDifferenceSeconds }) {
    const pairs = sidePairs(ctx.plan);
    return sideSums(ctx).flatMap((sum) => {
      const difference = sum.leftSeconds - sum.rightSeconds;
      const oneSided = sum.left.length === 0 || sum.right.length === 0;
      if (oneSided || Math.abs(difference) <= maxDifferenceSeconds) return [];
      const values = {
        moveName: moveName(ctx.plan, sum.first),
        leftSeconds: sum.leftSeconds,
        rightSeconds: sum.rightSeconds,
        shortSide: difference > 0 ? "right" : "left",
        differenceSeconds: Math.abs(difference),
      };
      return [{ message: "uneven" as const, items: unlikePairs(pairs, sum), values }];
    });
  },
});

export const unevenSidesExamples = (): RuleExamples => ({
  pass: [
    { say: "45 s a side", plan: examplePlan(bothSides("row")) },
    {
      say: "30 and 60 on the left, 60 and 30 on the right",
      plan: examplePlan([
        ...bothSides("x", { seconds: 30 }, { seconds: 60 }),
        ...bothSides("y", { seconds: 60 }, { seconds: 30 }),
      ]),
    },
  ],
  fail: [
    { say: "60 s left, 45 s right", plan: examplePlan(bothSides("row", { seconds: 60 })), expect: ["uneven"] },
    {
      say: "twice left, once right",
      plan: examplePlan([...bothSides("x"), ...bothSides("y").slice(0, 1)]),
      expect: ["uneven"],
    },
  ],
});

/** Only the pairs that differ, so that the finding does not mark the ones that are right. */
function unlikePairs(pairs: readonly SidePair[], sum: SideSum): string[] {
  return pairs
    .filter((pair) => pair.move === sum.first.move && pair.left?.seconds !== pair.right?.seconds)
    .flatMap(({ left, right }) => [left, right].flatMap((item) => (item ? [item.id] : [])));
}
