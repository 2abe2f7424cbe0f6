import { itemName } from "#lib/plan/format.ts";
import { headSeconds } from "#lib/plan/lookup.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, examplePlan } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import type { PlacedMove, RuleContext, RuleExamples } from "../define/types.ts";

const two = (seconds: number) => examplePlan([exampleMove("a", { seconds }), exampleMove("b")]);

export const noRoomForHeadsUp = defineRule({
  id: "no-room-for-heads-up",
  reads: "times",
  title: "No room for the heads-up",
  why: "People who are not told of a change in time meet it late and unprepared.",
  fix: "Make the item longer, put a pause after it, or plan a shorter heads-up.",
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({
    minBeforeSeconds: numberLimit({
      from: 0,
      to: 120,
      usual: 5,
      says: "Least work before the next move is called",
    }),
  }),
  messages: {
    short: "{itemName}: {seconds} is too short to call the next move {headsUpSeconds} ahead. Give it {neededSeconds}.",
    order:
      "The heads-up is {headsUpSeconds} ahead and the count-in {countInSeconds}. Make the heads-up longer than the count-in.",
  },
  check(ctx, limits) {
    const { plan } = ctx;
    const headsUpSeconds = headSeconds(plan, "headsUpSeconds");
    const countInSeconds = headSeconds(plan, "countInSeconds");
    if (headsUpSeconds === 0 || ctx.moves.length < 2) return [];
    if (headsUpSeconds <= countInSeconds && countInSeconds > 0) {
      return [{ message: "order", items: [], values: { headsUpSeconds, countInSeconds } }];
    }
    const needed = headsUpSeconds + limits.minBeforeSeconds;
    return ctx.moves.flatMap((placed, i) => {
      const next = ctx.moves[i + 1];
      if (!next || secondsUntil(ctx, placed, next) >= needed) return [];
      const { item } = placed;
      const values = { itemName: itemName(plan, item), seconds: item.seconds, headsUpSeconds, neededSeconds: needed };
      return [{ message: "short" as const, items: [item.id], values }];
    });
  },
});

export const noRoomForHeadsUpExamples = (): RuleExamples => ({
  pass: [
    { say: "20 s, which leaves five before a heads-up of 15", plan: two(20) },
    { say: "the last move, with nothing to announce", plan: examplePlan([exampleMove("a", { seconds: 10 })]) },
    {
      say: "a short move with a pause after it for the call",
      plan: examplePlan([exampleMove("a", { seconds: 10 }), { id: "p", kind: "pause", seconds: 20 }, exampleMove("b")]),
    },
  ],
  fail: [
    { say: "15 s of work and a heads-up of 15 s", plan: two(15), expect: ["short"] },
    {
      say: "a heads-up that falls into the count-in",
      plan: examplePlan([exampleMove("a"), exampleMove("b")], { headsUpSeconds: 3 }),
      expect: ["order"],
    },
  ],
});

/** Seconds of work and pause from the start of one move to the change into the next. */
function secondsUntil({ plan }: RuleContext, from: PlacedMove, to: PlacedMove): number {
  return plan.items.slice(from.index, to.index).reduce((sum, i) => sum + (i.kind === "heading" ? 0 : i.seconds), 0);
}
