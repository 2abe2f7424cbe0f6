import { defineMonthRule, OWN_FACTS } from "../define/define-month-rule.ts";
import { oneClass } from "../define/one-class.ts";
import { startWords } from "../define/words.ts";

export const noCoach = defineMonthRule({
  id: "no-coach",
  of: "slot",
  title: "A class has no coach",
  why: "Whoever comes stands before a closed door, or somebody is asked at the last minute.",
  fix: "Choose a coach who is free.",
  level: "look",
  source: OWN_FACTS,
  limits: [],
  check: ({ one }) => (!one.slot.coach ? [oneClass(one, {})] : []),
  say: (_, { one }) => `${startWords(one)} has no coach. Choose one.`,
});
