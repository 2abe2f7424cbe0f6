import { pairOf } from "../define/clashes.ts";
import { defineMonthRule, STUDIO_PRACTICE } from "../define/define-month-rule.ts";
import { gapsBelow } from "../define/gaps.ts";
import { hoursWords, startWords } from "../define/words.ts";

export const coachGapShort = defineMonthRule({
  id: "coach-gap-short",
  of: "coach",
  title: "One coach has two classes close together",
  why: "There is no time to set the room up again, to talk to people or to drink.",
  fix: "Move one of them, or give it to another coach.",
  level: "look",
  source: STUDIO_PRACTICE,
  limits: ["gapMinutes"],
  check: ({ id, classes }, limits) =>
    gapsBelow(classes, limits.gapMinutes)
      .filter(({ a, b }) => a.date === b.date)
      .map(({ a, b, minutes }) => ({ ...pairOf(id, a, b), values: { minutes } })),
  say: ({ classes: [a, b], values }, { coach }, limits) =>
    `${coach.name}: ${hoursWords(values.minutes)} between ${startWords(a)} and ${b.slot.start}; the studio asks for ${hoursWords(limits.gapMinutes)}. Move one, or give it to another coach.`,
});
