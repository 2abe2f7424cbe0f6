import { defineMonthRule, OWN_FACTS } from "../define/define-month-rule.ts";
import { oneClass } from "../define/one-class.ts";
import { startWords } from "../define/words.ts";

export const timeSkipped = defineMonthRule({
  id: "time-skipped",
  of: "slot",
  title: "A class begins at a time that the clock skips",
  why: "The clock is put forward over this time, so it is never shown; calendars begin the class later.",
  fix: "Choose a time that the clock shows.",
  level: "look",
  source: OWN_FACTS,
  limits: [],
  check: ({ one }) => (one.kind === "skipped" ? [oneClass(one, {})] : []),
  say: (_, { one }) => `${startWords(one)} is skipped when the clock goes forward. Choose another time.`,
});
