import { pairOf } from "../define/clashes.ts";
import { defineMonthRule } from "../define/define-month-rule.ts";
import { gapsBelow } from "../define/gaps.ts";
import { hoursWords, startWords, tillWords } from "../define/words.ts";

export const coachRestShort = defineMonthRule({
  id: "coach-rest-short",
  of: "coach",
  title: "A coach rests too short between two days",
  why: "Whoever closes in the evening and opens in the morning sleeps too little.",
  fix: "Give one of them to another coach, or move it.",
  level: "look",
  source: "Directive 2003/88/EC, article 3: 11 hours of rest in 24 (from memory); the studio sets it",
  limits: ["restHours"],
  check: ({ id, classes }, limits) =>
    gapsBelow(classes, 60 * limits.restHours)
      .filter(({ a, b }) => a.date !== b.date)
      .map(({ a, b, minutes }) => ({ ...pairOf(id, a, b), values: { minutes } })),
  say: ({ classes: [a, b], values }, { coach }, limits) =>
    `${coach.name}: ${hoursWords(values.minutes)} of rest from ${tillWords(a)} to ${startWords(b)}; the studio asks for ${hoursWords(60 * limits.restHours)}. Give one to another coach.`,
});
