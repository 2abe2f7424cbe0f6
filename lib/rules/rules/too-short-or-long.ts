import { itemName } from "#lib/plan/format.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, exampleMoves, examplePlan } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import type { Found, RuleExamples } from "../define/types.ts";

const ranged = (seconds: number) =>
  examplePlan([exampleMove("a", { seconds })], { moves: { squat: { ...exampleMoves.squat, seconds: [40, 60] } } });

export const tooShortOrLong = defineRule({
  id: "too-short-or-long",
  reads: "item",
  title: "A move is shorter or longer than it should be",
  why: "A move that is too short is over before people have found it; one that is too long costs them their form.",
  fix: "Bring the item into its range, or give it a range of its own if this is meant.",
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({
    minSeconds: numberLimit({
      from: 0,
      to: 14400,
      usual: 30,
      says: "Shortest time of a move without a range of its own",
    }),
    maxSeconds: numberLimit({
      from: 1,
      to: 14400,
      usual: 120,
      says: "Longest time of a move without a range of its own",
    }),
  }),
  messages: {
    short: "{itemName}: {seconds}, and the shortest is {shortestSeconds}. Add at least {missingSeconds}.",
    long: "{itemName}: {seconds}, and the longest is {longestSeconds}. Take at least {extraSeconds} off.",
  },
  check({ plan, moves }, limits) {
    return moves.flatMap(({ item, move: library }): Found<"short" | "long">[] => {
      const [shortest, longest] = item.range ?? library?.seconds ?? [limits.minSeconds, limits.maxSeconds];
      const { seconds } = item;
      const values = { itemName: itemName(plan, item), seconds, shortestSeconds: shortest, longestSeconds: longest };
      if (seconds < shortest) {
        return [{ message: "short", items: [item.id], values: { ...values, missingSeconds: shortest - seconds } }];
      }
      if (seconds > longest) {
        return [{ message: "long", items: [item.id], values: { ...values, extraSeconds: seconds - longest } }];
      }
      return [];
    });
  },
});

export const tooShortOrLongExamples = (): RuleExamples => ({
  pass: [
    { say: "45 s where the move allows 40 to 60", plan: ranged(45) },
    {
      say: "the item's own range wins over the move's",
      plan: examplePlan([exampleMove("a", { seconds: 20, range: [15, 30] })]),
    },
  ],
  fail: [
    { say: "35 s where the move needs 40", plan: ranged(35), expect: ["short"] },
    {
      say: "over two minutes with no range given",
      plan: examplePlan([exampleMove("a", { seconds: 121 })]),
      expect: ["long"],
    },
  ],
});
