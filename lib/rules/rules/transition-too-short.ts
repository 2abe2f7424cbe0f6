import { itemName } from "#lib/plan/format.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, examplePlan } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import type { Found, RuleExamples } from "../define/types.ts";

/** Two springs on (6 s), the carriage home (2 s) and the base (2 s): 10 s. */
const springChange = (transitionSeconds?: number) =>
  examplePlan([
    exampleMove("a"),
    exampleMove("b", { springs: { light: 3 }, ...(transitionSeconds === undefined ? {} : { transitionSeconds }) }),
  ]);

/**
 * Must fix when it is clearly too short: people who hurry a spring or a strap get hurt. The estimate is not a
 * measurement, so a second or two below it is only worth another look.
 */
export const transitionTooShort = defineRule({
  id: "transition-too-short",
  reads: "change",
  title: "A change is planned shorter than it takes",
  why: "People who get too little time hurry springs and straps, get hurt or start late, and the class runs over.",
  fix: "Plan at least the estimate, or make the change smaller.",
  level: "must",
  source: COMMON_PRACTICE,
  limits: limits({
    hurrySeconds: numberLimit({
      from: 0,
      to: 120,
      usual: 2,
      says: "Short by no more than this is only to be looked at again",
    }),
  }),
  messages: {
    short: "{itemName}: the change takes about {estimateSeconds} and has {plannedSeconds}. Plan {estimateSeconds}.",
    tight:
      "{itemName}: the change takes about {estimateSeconds} and has {plannedSeconds}, which is tight. Plan {estimateSeconds}, or make the change smaller.",
  },
  check({ plan, moves }, { hurrySeconds }) {
    return moves.flatMap(({ item, row: { transition } }): Found<"short" | "tight">[] => {
      const { planned, estimate } = transition;
      if (planned === null || planned >= estimate) return [];
      const values = {
        itemName: itemName(plan, item),
        plannedSeconds: planned,
        estimateSeconds: estimate,
        shortBySeconds: estimate - planned,
      };
      return estimate - planned > hurrySeconds
        ? [{ message: "short", items: [item.id], values }]
        : [{ message: "tight", items: [item.id], values, level: "look" }];
    });
  },
});

export const transitionTooShortExamples = (): RuleExamples => ({
  pass: [
    { say: "nothing planned: the estimate counts", plan: springChange() },
    { say: "exactly the estimate", plan: springChange(10) },
    {
      say: "no time where nothing changes",
      plan: examplePlan([exampleMove("a"), exampleMove("b", { transitionSeconds: 0 })]),
    },
  ],
  fail: [
    { say: "5 s for a change of 10 s", plan: springChange(5), expect: ["short"] },
    { say: "one second below", plan: springChange(9), expect: ["tight"] },
  ],
});
