import { moveName, springWords } from "#lib/plan/format.ts";
import { sidePairs } from "#lib/plan/lookup.ts";
import { springsDiffer } from "#lib/transitions/transitions.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { bothSides, examplePlan } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import type { Found, RuleExamples } from "../define/types.ts";

export const unevenSpringsBetweenSides = defineRule({
  id: "uneven-springs-between-sides",
  reads: "setups",
  title: "Left and right use different springs",
  why: "The sides do different work, and the class changes springs in between for nothing.",
  fix: "Give both sides the same springs and the same distance from the anchor.",
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({
    maxOffsetDifferenceMm: numberLimit({
      from: 0,
      to: 2000,
      usual: 0,
      says: "Most that the distance from the anchor may differ",
    }),
  }),
  messages: {
    springs: "{moveName}: {leftSprings} on the left and {rightSprings} on the right. Make them the same.",
    offset: "{moveName}: one side starts {differenceMm:mm} further off, so the load differs. Make them the same.",
  },
  check({ plan }, { maxOffsetDifferenceMm }) {
    return sidePairs(plan).flatMap(({ left, right }): Found<"springs" | "offset">[] => {
      if (!left || !right) return [];
      const items = [left.id, right.id];
      const name = moveName(plan, left);
      if (springsDiffer(left.springs, right.springs)) {
        const leftSprings = springWords(plan.equipment, left.springs);
        const rightSprings = springWords(plan.equipment, right.springs);
        return [{ message: "springs", items, values: { moveName: name, leftSprings, rightSprings } }];
      }
      const differenceMm = Math.abs((left.offsetMm ?? 0) - (right.offsetMm ?? 0));
      if (differenceMm <= maxOffsetDifferenceMm) return [];
      return [{ message: "offset", items, values: { moveName: name, differenceMm } }];
    });
  },
});

export const unevenSpringsBetweenSidesExamples = (): RuleExamples => ({
  pass: [
    { say: "the same springs", plan: examplePlan(bothSides("row")) },
    {
      say: "a spring counted as none makes no difference",
      plan: examplePlan(bothSides("row", { springs: { light: 1, heavy: 0 } })),
    },
  ],
  fail: [
    {
      say: "one light left, two right",
      plan: examplePlan(bothSides("row", {}, { springs: { light: 2 } })),
      expect: ["springs"],
    },
    {
      say: "100 mm further off on the right",
      plan: examplePlan(bothSides("row", {}, { offsetMm: 100 })),
      expect: ["offset"],
    },
  ],
});
