import { NOISE } from "#lib/numbers/round.ts";
import { secondsWords } from "#lib/plan/format.ts";
import { defineMonthRule, OWN_FACTS } from "../define/define-month-rule.ts";
import { oneClass } from "../define/one-class.ts";
import { startWords } from "../define/words.ts";

export const planTooLong = defineMonthRule({
  id: "plan-too-long",
  of: "slot",
  title: "A plan is longer than its class",
  why: "The class runs over, or its end is cut.",
  fix: "Fit the plan to the length, choose a shorter one, or give the class more time.",
  level: "must",
  source: OWN_FACTS,
  limits: [],
  check({ one }) {
    const over = (one.plan?.seconds ?? 0) - 60 * one.slot.minutes;
    return over > NOISE ? [oneClass(one, { seconds: over })] : [];
  },
  say: ({ values }, { one }) =>
    `${startWords(one)}: ${one.plan?.title} is ${secondsWords(values.seconds)} longer than the class. Shorten it, or choose another.`,
});
