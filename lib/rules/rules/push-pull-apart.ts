import { NOISE } from "#lib/numbers/round.ts";
import { clockTime } from "#lib/plan/format.ts";
import type { Group, Plan } from "#lib/plan/schema.ts";
import { defineRule } from "../define/define-rule.ts";
import { exampleMove, examplePlan } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import type { RuleExamples } from "../define/types.ts";

const classOf = (push: number, pull: number, changes: Partial<Plan> = {}) =>
  examplePlan(
    [
      exampleMove("push", { move: "press", seconds: push }),
      ...(pull > 0 ? [exampleMove("pull", { move: "row", side: "alternating", seconds: pull })] : []),
    ],
    changes,
  );

export const pushPullApart = defineRule({
  id: "push-pull-apart",
  reads: "times",
  title: "Far more pushing than pulling, or the other way round",
  why: "A class that mostly pushes, or mostly pulls, leaves the opposite muscles of the shoulder behind.",
  fix: "Give the other one more time, or say in the theme that the class is for one of them.",
  level: "look",
  source:
    "common practice, no source: no published ratio of push to pull in a class was found, and studies of strength differ even on which is larger",
  limits: limits({
    maxShare: numberLimit({
      from: 0.5,
      to: 1,
      usual: 0.67,
      says: "Largest share of pushing or pulling in the two together (67%: two to one)",
    }),
    minDifferenceSeconds: numberLimit({
      from: 0,
      to: 14400,
      usual: 120,
      says: "Smallest difference between them that counts",
    }),
  }),
  messages: {
    apart: "Pushing gets {pushSeconds} and pulling {pullSeconds}, {ratio} to 1. Give {less} more time, or {more} less.",
    only: "The class has {moreTime} of {more} and no {less}. Add a {less} move, or say in the theme that this is meant.",
  },
  check({ plan, balance: { push, pull } }, { maxShare, minDifferenceSeconds }) {
    const larger = Math.max(push, pull);
    const smaller = Math.min(push, pull);
    const all = push + pull;
    if (larger - smaller < minDifferenceSeconds || larger <= maxShare * all + NOISE) return [];
    const pushes = push > pull;
    const pattern = pushes ? "push" : "pull";
    const values = {
      pushSeconds: push,
      pullSeconds: pull,
      moreSeconds: larger,
      moreTime: clockTime(larger),
      more: pushes ? "pushing" : "pulling",
      less: pushes ? "pulling" : "pushing",
      ratio: smaller > 0 ? larger / smaller : null,
    };
    const found = { message: smaller === 0 ? ("only" as const) : ("apart" as const), items: [], values };
    return [isTheTheme(plan, pattern) ? { ...found, level: "info" as const } : found];
  },
});

export const pushPullApartExamples = (): RuleExamples => ({
  pass: [
    { say: "as much of one as of the other", plan: classOf(240, 240) },
    { say: "a short class that only pushes", plan: classOf(90, 0) },
    { say: "three minutes of pushing, not quite two of pulling", plan: classOf(180, 100) },
  ],
  fail: [
    { say: "five minutes of pushing, two of pulling", plan: classOf(300, 120), expect: ["apart"] },
    { say: "pushing only", plan: classOf(240, 0), expect: ["only"] },
    {
      say: "a theme that promises the chest and nothing of the back: for information",
      plan: classOf(300, 60, { theme: { name: "Chest", shares: { chest: 0.4 } } }),
      expect: ["apart"],
    },
  ],
});

const GROUPS_OF: Readonly<Record<"push" | "pull", readonly Group[]>> = {
  push: ["chest", "triceps", "shoulders"],
  pull: ["upper-back", "biceps"],
};

/** True when the theme promises muscles of this pattern and none of the other. */
function isTheTheme(plan: Plan, pattern: "push" | "pull"): boolean {
  const promised = (of: "push" | "pull") => GROUPS_OF[of].some((group) => (plan.theme?.shares?.[group] ?? 0) > 0);
  return promised(pattern) && !promised(pattern === "push" ? "pull" : "push");
}
