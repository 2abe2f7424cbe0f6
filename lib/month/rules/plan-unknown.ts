import { defineMonthRule, OWN_FACTS } from "../define/define-month-rule.ts";
import { oneClass } from "../define/one-class.ts";
import { startWords } from "../define/words.ts";

export const planUnknown = defineMonthRule({
  id: "plan-unknown",
  of: "slot",
  title: "The plan of a class cannot be read",
  why: "The plan is gone or not shared, so its work counts nowhere.",
  fix: "Ask for the plan to be shared, or choose another.",
  level: "look",
  source: OWN_FACTS,
  limits: [],
  check: ({ one, planUnknown }) => (planUnknown ? [oneClass(one, {})] : []),
  say: (_, { one }) => `${startWords(one)}: its plan is gone or not shared. Choose another, or ask for it.`,
});
