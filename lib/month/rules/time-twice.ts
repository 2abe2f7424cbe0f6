import { defineMonthRule, OWN_FACTS } from "../define/define-month-rule.ts";
import { oneClass } from "../define/one-class.ts";
import { startWords } from "../define/words.ts";

export const timeTwice = defineMonthRule({
  id: "time-twice",
  of: "slot",
  title: "A class begins at a time that the clock shows twice",
  why: "The clock is put back over this time; the first of the two is meant here, but people may come an hour late.",
  fix: "Choose another time, or tell everybody which is meant.",
  level: "look",
  source: OWN_FACTS,
  limits: [],
  check: ({ one }) => (one.kind === "twice" ? [oneClass(one, {})] : []),
  say: (_, { one }) =>
    `${startWords(one)} comes twice when the clock goes back; the first is meant. Choose another time, or tell everybody.`,
});
