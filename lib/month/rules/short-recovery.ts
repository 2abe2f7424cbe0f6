import { NOISE } from "#lib/numbers/round.ts";
import type { Group } from "#lib/plan/schema.ts";
import { defineMonthRule } from "../define/define-month-rule.ts";
import { groupName, hoursWords, startWords, tillWords } from "../define/words.ts";
import type { MonthClass } from "../sums-types.ts";
import type { MonthLimits } from "../types.ts";

export const shortRecovery = defineMonthRule({
  id: "short-recovery",
  of: "regulars",
  title: "A muscle group works hard again before it has recovered",
  why: "People who come to both classes load the same muscles while they are still tired. This is general guidance and no advice to a person: what somebody can bear, they and their clinician know.",
  fix: "Put a plan for other muscles into one of the two classes, or move it.",
  level: "look",
  source:
    "American College of Sports Medicine: at least 48 hours between sessions of the same muscle group (from secondary pages, some say 48 to 72); when a day counts as hard work: common practice, no source. The studio sets all of it",
  limits: ["heavySeconds", "heavyBy", "recoveryHours", "recoveryBy"],
  check({ id, classes, sums }, limits) {
    const byId = new Map(classes.map((one) => [one.id, one]));
    return sums.recovery.flatMap(({ group, to, minutes, slots }) => {
      const least = leastMinutes(limits, group);
      const pair = slots.flatMap((slot) => byId.get(slot) ?? []) as [MonthClass, MonthClass];
      const found = { about: `${id}:${group}:${to}`, classes: pair, values: { minutes, least }, group };
      return minutes < least - NOISE ? [found] : [];
    });
  },
  say: ({ group, classes: [a, b], values }, { regulars }) =>
    `${regulars.name}: ${groupName(group)} worked hard till ${tillWords(a)}, and again on ${startWords(b)}. Rest: ${hoursWords(values.minutes)}; the studio asks for ${hoursWords(values.least)}.`,
});

const leastMinutes = ({ recoveryHours, recoveryBy }: MonthLimits, group: Group): number =>
  60 * (recoveryBy[group] ?? recoveryHours);
