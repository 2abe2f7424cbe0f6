import { defineMonthRule, OWN_FACTS } from "../define/define-month-rule.ts";
import { oneClass } from "../define/one-class.ts";
import { startWords } from "../define/words.ts";

export const onAHoliday = defineMonthRule({
  id: "on-a-holiday",
  of: "slot",
  title: "A class is on a holiday",
  why: "It may be meant, or it may have been forgotten when the holiday was entered.",
  fix: "Leave it if it is meant; else take it out.",
  level: "info",
  source: OWN_FACTS,
  limits: [],
  check: ({ one, holiday }) => (holiday !== undefined ? [oneClass(one, {})] : []),
  say: (_, { one, holiday }) => `${startWords(one)} is on a holiday: ${holiday}. Leave it if that is meant.`,
});
