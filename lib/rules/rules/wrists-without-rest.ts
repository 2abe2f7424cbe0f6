import { moveName, sentenceCase } from "#lib/plan/format.ts";
import { wristLoad } from "#lib/statics/wrists.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, exampleMoves, examplePlan } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import type { RuleExamples } from "../define/types.ts";
import { sidedStretches } from "../select/stretches.ts";

const plank = (id: string, seconds: number, transitionSeconds?: number) =>
  exampleMove(id, { move: "plank", seconds, ...(transitionSeconds === undefined ? {} : { transitionSeconds }) });

const sidePlanks = (...items: ["left" | "right", number][]) =>
  examplePlan(
    items.map(([side, seconds], i) => exampleMove(`a${i}`, { move: "plank", side, seconds })),
    { moves: { plank: { ...exampleMoves.plank, name: "Side plank", position: "side-lying", sides: "each" } } },
  );

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
      says: "Longest wrist load without a rest, a plank on straight arms counting in full",
    }),
    minPauseSeconds: numberLimit({ from: 1, to: 600, usual: 15, says: "A pause at least this long counts as a rest" }),
    restSeconds: numberLimit({ from: 1, to: 600, usual: 20, says: "A change at least this long counts as a rest" }),
  }),
  messages: {
    long: "{load}: {seconds} without a rest, from {first} to {last}; the limit is {maxSeconds}. Do one of them on the forearms, or rest.",
    alone: "{first}: {load} for {seconds}; the limit is {maxSeconds}. Shorten it, or use the forearms.",
  },
  check(ctx, { maxSeconds, ...rests }) {
    return sidedStretches(ctx, ({ item, move }, side) => wristLoad(move, item.side)[side], rests)
      .filter(({ stretch }) => stretch.effortSeconds > maxSeconds)
      .map(({ stretch: { moves, effortSeconds, workSeconds }, side }) => {
        const last = moves.at(-1) ?? moves[0];
        const message = moves.length === 1 ? ("alone" as const) : ("long" as const);
        const load = side ? `load on the ${side} wrist` : "wrist load";
        return {
          message,
          ...(side ? { about: side } : {}),
          items: moves.map(({ item }) => item.id),
          values: {
            load: message === "long" ? sentenceCase(load) : load,
            seconds: Math.round(effortSeconds),
            workSeconds,
            maxSeconds,
            first: moveName(ctx.plan, moves[0].item),
            last: moveName(ctx.plan, last.item),
          },
        };
      });
  },
});

export const wristsWithoutRestExamples = (): RuleExamples => ({ pass: passes(), fail: failures() });

const passes = (): RuleExamples["pass"] => [
  {
    say: "two minutes of side plank on each side: each wrist has its turn",
    plan: sidePlanks(["left", 60], ["right", 60], ["left", 60], ["right", 60]),
  },
  {
    say: "planks on the forearms, whatever their cautions",
    plan: examplePlan([plank("a", 180)], {
      moves: { plank: { ...exampleMoves.plank, handsShare: { pose: "forearm-plank" } } },
    }),
  },
  { say: "two planks of a minute", plan: examplePlan([plank("a", 60), plank("b", 60)]) },
  {
    say: "a change that is long enough for a rest",
    plan: examplePlan([plank("a", 60), plank("b", 60), plank("c", 60, 25)]),
  },
  { say: "a squat in the middle", plan: examplePlan([plank("a", 90), exampleMove("b"), plank("c", 90)]) },
];

const failures = (): RuleExamples["fail"] => [
  {
    say: "a move that says nothing of wrists: hands and position do",
    plan: examplePlan([plank("a", 180)], { moves: { plank: { ...exampleMoves.plank, cautions: [] } } }),
    expect: ["alone"],
  },
  { say: "three minutes on the left wrist", plan: sidePlanks(["left", 90], ["left", 90]), expect: ["long"] },
  {
    say: "a pause of ten seconds is no rest",
    plan: examplePlan([plank("a", 90), { id: "p", kind: "pause", seconds: 10 }, plank("b", 60)]),
    expect: ["long"],
  },
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
];
