import { defineMonthRule, OWN_FACTS } from "../define/define-month-rule.ts";
import { oneClass } from "../define/one-class.ts";
import { startWords } from "../define/words.ts";

export const unsignedPlan = defineMonthRule({
  id: "unsigned-plan",
  of: "slot",
  title: "A class has a plan that is not signed off",
  why: "Nobody has read it, and the cueing device runs signed editions only.",
  fix: "Have the plan read and signed off, or choose one that is.",
  level: "look",
  source: OWN_FACTS,
  limits: [],
  check: ({ one }) => (one.plan && !one.plan.signed ? [oneClass(one, {})] : []),
  say: (_, { one }) =>
    `${startWords(one)}: ${one.plan?.title} is not signed off. Have it read, or choose a signed plan.`,
});
