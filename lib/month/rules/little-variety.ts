import { NOISE } from "#lib/numbers/round.ts";
import { plainNumber, plural } from "#lib/plan/format.ts";
import { defineMonthRule, STUDIO_PRACTICE } from "../define/define-month-rule.ts";
import { plannedIn } from "../define/planned.ts";
import { classCount, dateWords } from "../define/words.ts";

/** One class alone says little about a week. */
const LEAST_CLASSES = 2;

export const littleVariety = defineMonthRule({
  id: "little-variety",
  of: "regulars",
  title: "A week has few different moves",
  why: "The same moves again and again load the same tissue and bore people.",
  fix: "Put in a plan with other moves.",
  level: "look",
  source: STUDIO_PRACTICE,
  limits: ["varietyLeast"],
  check: ({ id, classes, weeks, sums }, { varietyLeast }) =>
    sums.weeks.flatMap(({ week, whole, distinct }, i) => {
      if (!whole || distinct >= varietyLeast - NOISE) return [];
      const planned = plannedIn(classes, weeks[i]);
      const found = { about: `${id}:${week}`, classes: planned, values: { distinct }, monday: weeks[i]?.from };
      return planned.length >= LEAST_CLASSES ? [found] : [];
    }),
  say: ({ monday = "", classes, values: { distinct } }, { regulars }, { varietyLeast }) =>
    `${regulars.name}: ${plural(distinct, "move")} in ${classCount(classes.length)} in the week from ${dateWords(monday)}; the studio asks for ${plainNumber(varietyLeast)}. Choose a plan with others.`,
});
