import { defineMonthRule, OWN_FACTS } from "../define/define-month-rule.ts";
import { oneClass } from "../define/one-class.ts";
import { startWords } from "../define/words.ts";

export const coachRole = defineMonthRule({
  id: "coach-role",
  of: "slot",
  title: "Whoever gives a class is neither coach nor lead",
  why: "Classes are given by people who have been trained for it.",
  fix: "Choose a coach or a lead, or give the person that role.",
  level: "look",
  source: OWN_FACTS,
  limits: [],
  check: ({ one, coach }) =>
    coach && !coach.roles.some((role) => role === "coach" || role === "lead") ? [oneClass(one, {})] : [],
  say: (_, { one, coach }) => `${startWords(one)}: ${coach?.name} is neither coach nor lead. Choose somebody who is.`,
});
