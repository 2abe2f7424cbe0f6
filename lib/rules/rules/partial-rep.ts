import { cycleSeconds } from "#lib/clock/clock.ts";
import { NOISE } from "#lib/numbers/round.ts";
import { itemName, plainNumber } from "#lib/plan/format.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, examplePlan } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import type { RuleExamples } from "../define/types.ts";

/**
 * For information. The message names no better time and does not send people to the fit: only the fit knows which time the
 * class has room for, the fix asks it, and the fit itself may have cut the repetition off as the lesser evil. The example squat takes 5 s a repetition.
 */
export const partialRep = defineRule({
  id: "partial-rep",
  reads: "item",
  title: "The time ends in the middle of a repetition",
  why: "The last repetition is cut off, and 'last one' is called at the wrong moment.",
  fix: "Give it a time of whole repetitions if the class has room for one; the fit looks for them.",
  level: "info",
  source: COMMON_PRACTICE,
  limits: limits({
    toleranceSeconds: numberLimit({
      from: 0,
      to: 60,
      usual: 0.5,
      says: "How far the time may be from whole repetitions",
    }),
  }),
  messages: {
    partial:
      "{itemName}: {seconds} at {cycleSeconds} a repetition makes {reps}, so the last is cut off. Choose whole repetitions if the class has room.",
  },
  check({ plan, moves }, { toleranceSeconds }) {
    return moves.flatMap(({ item, move: library }) => {
      const cycle = library ? cycleSeconds(library) : null;
      if (!cycle) return [];
      const over = item.seconds - Math.floor(item.seconds / cycle + NOISE) * cycle;
      if (Math.min(over, cycle - over) <= toleranceSeconds + NOISE) return [];
      const values = {
        itemName: itemName(plan, item),
        seconds: item.seconds,
        reps: plainNumber(item.seconds / cycle),
        cycleSeconds: cycle,
      };
      return [{ message: "partial" as const, items: [item.id], values }];
    });
  },
});

export const partialRepExamples = (): RuleExamples => ({
  pass: [
    { say: "45 s of 5 s each", plan: examplePlan([exampleMove("a", { seconds: 45 })]) },
    { say: "a hold has no repetitions", plan: examplePlan([exampleMove("a", { move: "plank", seconds: 43 })]) },
  ],
  fail: [
    { say: "42 s of 5 s each", plan: examplePlan([exampleMove("a", { seconds: 42 })]), expect: ["partial"] },
    { say: "less than one repetition", plan: examplePlan([exampleMove("a", { seconds: 3 })]), expect: ["partial"] },
  ],
});
