import { NOISE } from "#lib/numbers/round.ts";
import { defineMonthRule, STUDIO_PRACTICE } from "../define/define-month-rule.ts";
import { dateWords, hoursWords } from "../define/words.ts";

export const coachLongDay = defineMonthRule({
  id: "coach-long-day",
  of: "coach",
  title: "A coach teaches for very long on one day",
  why: "Whoever is tired sees less and corrects less.",
  fix: "Give a class of that day to another coach.",
  level: "look",
  source: STUDIO_PRACTICE,
  limits: ["coachMinutesDay"],
  check: ({ id, classes, sums }, limits) =>
    sums.days
      .filter((day) => day.minutes > limits.coachMinutesDay + NOISE)
      .map(({ date, minutes }) => ({
        about: `${id}:${date}`,
        classes: classes.filter((one) => one.date === date),
        values: { minutes },
        date,
      })),
  say: ({ date, values }, { coach }, limits) =>
    `${coach.name} teaches ${hoursWords(values.minutes)} on ${dateWords(date)}; the studio allows at most ${hoursWords(limits.coachMinutesDay)}. Give a class to another coach.`,
});
