import { agree, plural } from "#lib/plan/format.ts";
import { defineMonthRule, OWN_FACTS } from "../define/define-month-rule.ts";
import { classCount } from "../define/words.ts";

export const themePromiseMissed = defineMonthRule({
  id: "theme-promise-missed",
  of: "theme",
  title: "Fewer classes have a theme than was promised",
  why: "What was announced for the month is not given.",
  fix: "Give more classes this theme, or change the promise.",
  level: "look",
  source: OWN_FACTS,
  limits: [],
  check({ id, classes, sums: { promised, slots } }) {
    return promised !== null && slots < promised ? [{ about: id, classes, values: { promised, have: slots } }] : [];
  },
  say: ({ values: { promised, have } }, { theme }) =>
    `${theme.name}: ${classCount(promised)} ${agree(promised, "was", "were")} promised, ${plural(have, "class", "classes")} ${agree(have, "has", "have")} it. Give it to more.`,
});
