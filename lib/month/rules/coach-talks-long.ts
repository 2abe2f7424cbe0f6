import { NOISE } from "#lib/numbers/round.ts";
import { defineMonthRule, STUDIO_PRACTICE } from "../define/define-month-rule.ts";
import { dateWords, hoursWords } from "../define/words.ts";

export const coachTalksLong = defineMonthRule({
  id: "coach-talks-long",
  of: "coach",
  title: "A coach talks for very long on one day",
  why: "The voice tires, and what is said late in the day is not heard.",
  fix: "Give a class of that day to another coach, or choose plans with less talk.",
  level: "look",
  source: STUDIO_PRACTICE,
  limits: ["coachTalkSecondsDay"],
  check: ({ id, classes, sums }, limits) =>
    sums.days
      .filter((day) => day.talkSeconds > limits.coachTalkSecondsDay + NOISE)
      .map(({ date, talkSeconds }) => ({
        about: `${id}:${date}`,
        classes: classes.filter((one) => one.date === date),
        values: { seconds: talkSeconds },
        date,
      })),
  say: ({ date, values }, { coach }, limits) =>
    `${coach.name} talks for ${hoursWords(values.seconds / 60)} on ${dateWords(date)}; the studio allows at most ${hoursWords(limits.coachTalkSecondsDay / 60)}. Give a class to another coach.`,
});
