import { secondsWords } from "#lib/plan/format.ts";
import { defineMonthRule, STUDIO_PRACTICE } from "../define/define-month-rule.ts";
import { dateWords, groupName } from "../define/words.ts";
import { workOf } from "../sums/plan-work.ts";
import { isHeavy } from "../sums/recovery.ts";

export const heavyTwiceADay = defineMonthRule({
  id: "heavy-twice-a-day",
  of: "regulars",
  title: "Two classes of one day work the same muscles hard",
  why: "The second class meets tired muscles. This is general guidance and no advice to a person.",
  fix: "Put a plan for other muscles into one of them.",
  level: "look",
  source: STUDIO_PRACTICE,
  limits: ["heavySeconds", "heavyBy"],
  check: ({ id, classes, sums }, limits) =>
    sums.days.flatMap(({ date, heavy, groups }) =>
      heavy.flatMap((group) => {
        const alone = classes.filter((one) => one.date === date && isHeavy(limits, group, workOf(one.plan, group)));
        const found = { about: `${id}:${group}:${date}`, classes: alone, values: { seconds: groups[group] ?? 0 } };
        return alone.length >= 2 ? [{ ...found, group, date }] : [];
      }),
    ),
  say: ({ group, date, classes, values }, { regulars }) =>
    `${regulars.name}: ${groupName(group)}, hard work at ${classes.map(({ slot }) => slot.start).join(" and ")} on ${dateWords(date)}, ${secondsWords(values.seconds)} together. Choose another plan for one.`,
});
