import { headSeconds } from "#lib/plan/lookup.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, examplePlan } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import type { RuleExamples } from "../define/types.ts";

export const openingOrClosingMissing = defineRule({
  id: "opening-or-closing-missing",
  reads: "times",
  title: "Too little time to open or close the class",
  why: "Without an opening nobody hears who is in the room and what to watch for; without a closing people leave out of breath with springs still on.",
  fix: "Give the opening and the closing enough time.",
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({
    minOpeningSeconds: numberLimit({ from: 0, to: 3600, usual: 30, says: "Shortest opening" }),
    minClosingSeconds: numberLimit({ from: 0, to: 3600, usual: 30, says: "Shortest closing" }),
  }),
  messages: {
    opening: "The opening has {seconds}. Give it at least {leastSeconds}, to welcome people and ask who needs care.",
    closing: "The closing has {seconds}. Give it at least {leastSeconds}, to slow down and put the springs back.",
  },
  check({ plan }, limits) {
    const ends = [
      { message: "opening" as const, seconds: headSeconds(plan, "openingSeconds"), least: limits.minOpeningSeconds },
      { message: "closing" as const, seconds: headSeconds(plan, "closingSeconds"), least: limits.minClosingSeconds },
    ];
    return ends
      .filter(({ seconds, least }) => seconds < least)
      .map(({ message, seconds, least }) => ({ message, items: [], values: { seconds, leastSeconds: least } }));
  },
});

export const openingOrClosingMissingExamples = (): RuleExamples => ({
  pass: [
    { say: "left out: each takes its default of a minute", plan: examplePlan([exampleMove("a")]) },
    { say: "exactly the shortest", plan: examplePlan([exampleMove("a")], { openingSeconds: 30, closingSeconds: 30 }) },
  ],
  fail: [
    { say: "no opening", plan: examplePlan([exampleMove("a")], { openingSeconds: 0 }), expect: ["opening"] },
    {
      say: "ten seconds each",
      plan: examplePlan([exampleMove("a")], { openingSeconds: 10, closingSeconds: 10 }),
      expect: ["opening", "closing"],
    },
  ],
});
