import { NOISE } from "#lib/numbers/round.ts";
import { tagWords } from "#lib/plan/format.ts";
import { GROUPS } from "#lib/plan/schema.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, examplePlan } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import type { RuleExamples } from "../define/types.ts";

/** The example press is two thirds chest, one third triceps. */
const presses = (share: number) =>
  examplePlan([exampleMove("a", { move: "press" })], { theme: { name: "Chest", shares: { chest: share } } });

export const themeMissed = defineRule({
  id: "theme-missed",
  reads: "times",
  title: "The class does not train what its theme promises",
  why: "People who came for the theme do not get it.",
  fix: "Give moves for that group more time, or lower the theme's share.",
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({
    toleranceShare: numberLimit({ from: 0, to: 1, usual: 0, says: "How far a group may fall below the theme's share" }),
  }),
  messages: {
    missed:
      "{theme}: {wantedShare} is promised for {group} and {actualShare} planned. Give it about {missingSeconds} that other work takes now.",
    absent: "{theme}: {wantedShare} is promised for {group} and no move is planned for it. Add one.",
  },
  check({ plan, balance }, { toleranceShare }) {
    const all = GROUPS.reduce((sum, group) => sum + (balance.groups[group]?.seconds ?? 0), 0);
    return GROUPS.flatMap((group) => {
      const wanted = plan.theme?.shares?.[group] ?? 0;
      const { seconds = 0, share = 0 } = balance.groups[group] ?? {};
      if (share >= wanted - toleranceShare - NOISE) return [];
      // The class does not get longer: what this group gains, others lose. Seconds are weighted as in the balance.
      const values = {
        theme: plan.theme?.name ?? "",
        group: tagWords(group),
        groupId: group,
        wantedShare: wanted,
        actualShare: share,
        missingSeconds: Math.ceil(wanted * all - seconds),
      };
      return [{ message: seconds === 0 ? ("absent" as const) : ("missed" as const), items: [], about: group, values }];
    });
  },
});

export const themeMissedExamples = (): RuleExamples => ({
  pass: [
    { say: "two thirds where half is promised", plan: presses(0.5) },
    { say: "a theme that is only a name", plan: examplePlan([exampleMove("a")], { theme: { name: "Anything" } }) },
  ],
  fail: [
    { say: "two thirds where nine tenths are promised", plan: presses(0.9), expect: ["missed"] },
    {
      say: "a group no move trains",
      plan: examplePlan([exampleMove("a")], { theme: { name: "Arms", shares: { biceps: 0.2 } } }),
      expect: ["absent"],
    },
  ],
});
