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
  title: "Weight stays on the wrists for too long",
  why: "Bent wrists under load go numb or sore long before the muscles tire; people with sore wrists follow their clinician's word.",
  fix: "Put a move without weight on the hands, a pause or a longer change into the stretch, or take some of it on the forearms.",
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({
    maxSeconds: numberLimit({
      from: 15,
      to: 3600,
      usual: 120,
      says: "Longest work in a row with weight on the wrists",
    }),
    restSeconds: numberLimit({ from: 1, to: 600, usual: 20, says: "A change this long takes the weight off" }),
  }),
  messages: {
    long: "{seconds} on the wrists without a rest, from {first} to {last}, where {maxSeconds} is the most; put one on the forearms, or rest.",
    alone:
      "{first}: weight on the wrists for {seconds}, where {maxSeconds} is the most; make it shorter, or use the forearms.",
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
      say: "a change long enough to shake the hands out",
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
      say: "a heading is no rest",
      plan: examplePlan([plank("a", 90), { id: "h", kind: "heading", title: "More" }, plank("b", 60)]),
      expect: ["long"],
    },
    { say: "one plank of three minutes", plan: examplePlan([plank("a", 180)]), expect: ["alone"] },
  ],
});
