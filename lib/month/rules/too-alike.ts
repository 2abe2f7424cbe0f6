import { percentsApart } from "#lib/formats/percent.ts";
import { NOISE } from "#lib/numbers/round.ts";
import { pairOf } from "../define/clashes.ts";
import { defineMonthRule, STUDIO_PRACTICE } from "../define/define-month-rule.ts";
import { startWords } from "../define/words.ts";
import type { MonthClass } from "../sums-types.ts";

export const tooAlike = defineMonthRule({
  id: "too-alike",
  of: "regulars",
  title: "Two neighbouring classes are much alike",
  why: "The same people get the same class again.",
  fix: "Put another plan into one of them.",
  level: "look",
  source: STUDIO_PRACTICE,
  limits: ["likeMost"],
  check: ({ id, classes, sums }, { likeMost }) =>
    sums.neighbours.flatMap(({ likeness }, i) => {
      if (likeness === null || likeness < likeMost - NOISE) return [];
      const [a, b] = classes.slice(i, i + 2) as [MonthClass, MonthClass];
      return [{ ...pairOf(id, a, b), values: { likeness } }];
    }),
  say({ classes: [a, b], values: { likeness } }, { regulars }, { likeMost }) {
    const [alike, most] = percentsApart([likeness, likeMost]);
    return `${regulars.name}: ${startWords(b)} is like ${startWords(a)}, ${alike}; the studio asks for less than ${most}. Choose another plan for one.`;
  },
});
