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

/** Nothing to do, and 17 syllables to tell: 3.8 s, so 4 s. */
const told = (transitionSeconds: number) =>
  examplePlan([
    exampleMove("a"),
    exampleMove("b", {
      transitionSeconds,
      script: [{ kind: "setup", text: "Same springs, stay as you are, and keep both of your feet on the front bar." }],
    }),
  ]);

/**
 * Must fix when people clearly get too little time for what they do: who hurries a spring or a strap gets hurt. The
 * estimate is not a measurement, so a second or two below it is only worth another look. So is too little time to tell the
 * set-up, since a coach can begin to tell it earlier.
 */
export const transitionTooShort = defineRule({
  id: "transition-too-short",
  reads: "change",
  title: "A change is planned shorter than it takes",
  why: "People who get too little time hurry springs and straps, get hurt or start late, and the class runs over.",
  fix: "Plan at least what it takes to do and to tell, or make the change or its set-up lines smaller.",
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
    short: "{itemName}: the change takes about {estimateSeconds} to do and has {plannedSeconds}. Plan {neededSeconds}.",
    tight:
      "{itemName}: the change takes about {estimateSeconds} to do and has {plannedSeconds}, which is tight. Plan {neededSeconds}.",
    untold:
      "{itemName}: the set-up takes {tellingSeconds} to tell and has {plannedSeconds}. Plan {neededSeconds}, or shorten its set-up lines.",
  },
  check({ plan, moves }, { hurrySeconds }) {
    return moves.flatMap(({ item, row: { transition } }): Found<"short" | "tight" | "untold">[] => {
      const { planned, estimate, telling } = transition;
      const needed = Math.max(estimate, telling);
      if (planned === null || planned >= needed) return [];
      const message = estimate - planned > hurrySeconds ? "short" : telling > estimate ? "untold" : "tight";
      const values = {
        itemName: itemName(plan, item),
        plannedSeconds: planned,
        estimateSeconds: estimate,
        tellingSeconds: telling,
        neededSeconds: needed,
        shortBySeconds: needed - planned,
        shortOf: message === "untold" ? "telling" : "doing",
      };
      const found = { items: [item.id], values };
      return [message === "short" ? { ...found, message } : { ...found, message, level: "look" }];
    });
  },
});

export const transitionTooShortExamples = (): RuleExamples => ({
  pass: [
    { say: "nothing planned: it lasts until all is done and told", plan: springChange() },
    { say: "exactly the estimate", plan: springChange(10) },
    {
      say: "no time where nothing changes and nothing is told",
      plan: examplePlan([exampleMove("a"), exampleMove("b", { transitionSeconds: 0, script: [] })]),
    },
    { say: "as long as it takes to tell", plan: told(5) },
  ],
  fail: [
    { say: "5 s for a change of 10 s", plan: springChange(5), expect: ["short"] },
    { say: "one second below", plan: springChange(9), expect: ["tight"] },
    { say: "nothing to do, but 4 s to tell in 1 s", plan: told(1), expect: ["untold"] },
  ],
});
