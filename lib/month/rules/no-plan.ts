import { defineMonthRule, OWN_FACTS } from "../define/define-month-rule.ts";
import { oneClass } from "../define/one-class.ts";
import { startWords } from "../define/words.ts";

export const noPlan = defineMonthRule({
  id: "no-plan",
  of: "slot",
  title: "A class has no plan",
  why: "Its work counts nowhere until it has one: recovery and likeness are worked out without it.",
  fix: "Put a plan in, or let the month be filled.",
  level: "look",
  source: OWN_FACTS,
  limits: [],
  check: ({ one }) => (!one.slot.plan ? [oneClass(one, {})] : []),
  say: (_, { one }) => `${startWords(one)} has no plan. Put one in.`,
});
