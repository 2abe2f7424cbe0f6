import { percentsApart } from "#lib/formats/percent.ts";
import { NOISE } from "#lib/numbers/round.ts";
import { defineMonthRule, STUDIO_PRACTICE } from "../define/define-month-rule.ts";
import { plannedIn } from "../define/planned.ts";
import { dateWords } from "../define/words.ts";

export const weekRisesMuch = defineMonthRule({
  id: "week-rises-much",
  of: "regulars",
  title: "A week works people much harder than the one before",
  why: "A jump in work is harder to bear than a slow rise. This is general guidance and no advice to a person.",
  fix: "Take a class out of the week, or put lighter plans in.",
  level: "look",
  source: STUDIO_PRACTICE,
  limits: ["riseMost"],
  check: ({ id, classes, weeks, sums }, { riseMost }) =>
    sums.weeks.flatMap(({ week, change }, i) => {
      if (change === null || change <= riseMost + NOISE) return [];
      return [
        { about: `${id}:${week}`, classes: plannedIn(classes, weeks[i]), values: { change }, monday: weeks[i]?.from },
      ];
    }),
  say({ monday = "", values: { change } }, { regulars }, { riseMost }) {
    const [more, most] = percentsApart([change, riseMost]);
    return `${regulars.name}: the week from ${dateWords(monday)} has ${more} more work than the one before; the studio allows at most ${most}. Choose lighter plans.`;
  },
});
