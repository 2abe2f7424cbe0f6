import { overlaps } from "../define/clashes.ts";
import { defineMonthRule, OWN_FACTS } from "../define/define-month-rule.ts";
import { hoursWords, startWords } from "../define/words.ts";

export const coachClash = defineMonthRule({
  id: "coach-clash",
  of: "coach",
  title: "One coach has two classes at the same time",
  why: "One of the classes has nobody to give it.",
  fix: "Give one of them to another coach, or move it.",
  level: "must",
  source: OWN_FACTS,
  limits: [],
  check: ({ id, classes }) => overlaps(id, classes),
  say: ({ classes: [a, b], values }, { coach }) =>
    `${coach.name}: ${startWords(a)} and ${startWords(b)} overlap by ${hoursWords(values.minutes)}. Give one to another coach, or move it.`,
});
