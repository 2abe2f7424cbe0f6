import { moveName } from "#lib/plan/format.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, examplePlan } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import type { RuleExamples } from "../define/types.ts";
import { workStretches } from "../select/stretches.ts";

const plank = (id: string, seconds: number, transitionSeconds?: number) =>
  exampleMove(id, { move: "plank", seconds, ...(transitionSeconds === undefined ? {} : { transitionSeconds }) });

export const wristsWithoutRest = defineRule({
  id: "wrists-without-rest",
  reads: "times",
  title: "Wrist load for too long without a rest",
  why: "Wrists bent under load go numb or sore long before the muscles tire; people with sore wrists follow their clinician's advice.",
  fix: "Put in a move without wrist load, a pause or a longer change, or do some of it on the forearms.",
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({
    maxSeconds: numberLimit({
      from: 15,
      to: 3600,
      usual: 120,
      says: "Longest wrist load without a rest",
    }),
    restSeconds: numberLimit({ from: 1, to: 600, usual: 20, says: "A change at least this long counts as a rest" }),
  }),
  messages: {
    long: "{seconds} of wrist load without a rest, from {first} to {last}; the limit is {maxSeconds}. Do one of them on the forearms, or rest.",
    alone: "{first}: {seconds} of wrist load; the limit is {maxSeconds}. Shorten it, or use the forearms.",
  },
  check(ctx, { maxSeconds, restSeconds }) {
    return workStretches(ctx, ({ move: library }) => library?.cautions?.includes("wrist-load") === true, restSeconds)
      .filter(({ seconds }) => seconds > maxSeconds)
      .map(({ moves, seconds }) => {
        const last = moves.at(-1) ?? moves[0];
        return {
          message: moves.length === 1 ? ("alone" as const) : ("long" as const),
          items: moves.map(({ item }) => item.id),
          values: {
            seconds,
            maxSeconds,
            first: moveName(ctx.plan, moves[0].item),
            last: moveName(ctx.plan, last.item),
          },
        };
      });
  },
});

export const wristsWithoutRestExamples = (): RuleExamples => ({
  pass: [
    { say: "two planks of a minute", plan: examplePlan([plank("a", 60), plank("b", 60)]) },
    {
      say: "a change that is long enough for a rest",
      plan: examplePlan([plank("a", 60), plank("b", 60), plank("c", 60, 25)]),
    },
    { say: "a squat in the middle", plan: examplePlan([plank("a", 90), exampleMove("b"), plank("c", 90)]) },
  ],
  fail: [
    {
      say: "three planks in a row",
      plan: examplePlan([plank("a", 60), plank("b", 60), plank("c", 60)]),
      expect: ["long"],
    },
    {
      say: "a heading does not count as a rest",
      plan: examplePlan([plank("a", 90), { id: "h", kind: "heading", title: "More" }, plank("b", 60)]),
      expect: ["long"],
    },
    { say: "one plank of three minutes", plan: examplePlan([plank("a", 180)]), expect: ["alone"] },
  ],
});
