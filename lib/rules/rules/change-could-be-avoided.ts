import { bestOrder } from "#lib/order/order.ts";
import { itemName, moveName, springWords } from "#lib/plan/format.ts";
import type { PlanItem } from "#lib/plan/schema.ts";
import { defineRule } from "../define/define-rule.ts";
import { bothSides, exampleMove, exampleMoves, examplePlan } from "../define/example-plan.ts";
import { limits, numberLimit, wholeLimit } from "../define/limit-fields.ts";
import type { Found, RuleContext, RuleExamples } from "../define/types.ts";
import { type AvoidableChange, avoidableChanges } from "../select/avoidable-changes.ts";

const range = { max: { light: 3, heavy: 1 } };
const moves = {
  ...exampleMoves,
  squat: { ...exampleMoves.squat, springs: range },
  row: { ...exampleMoves.row, springs: range, travelMm: [0, 400] as [number, number] },
};
const rows = (left: number, between: number) =>
  examplePlan(
    [
      exampleMove("a", { move: "row", side: "alternating", springs: { light: left } }),
      ...bothSides("b", { springs: { light: between } }, { springs: { light: between } }),
      exampleMove("c", { move: "row", side: "alternating", springs: { light: left } }),
    ],
    { moves },
  );
const squats = (between: Record<string, number>) =>
  examplePlan(
    [
      exampleMove("a", { springs: { light: 3 } }),
      exampleMove("b", { springs: between }),
      exampleMove("c", { springs: { light: 3 } }),
    ],
    {
      moves,
    },
  );

/** For information: a coach may want exactly this change. */
export const changeCouldBeAvoided = defineRule({
  id: "change-could-be-avoided",
  reads: "setups",
  title: "A spring change could be avoided",
  why: "Every change costs the class seconds and attention that could go into work.",
  fix: "Keep the springs from before; where the finding says so, people start further from the anchor or nearer to it.",
  level: "info",
  source:
    "the room's measured springs and the ranges in the studio's library; how much time makes it worth while is common practice, no source",
  limits: limits({
    minSavedSeconds: numberLimit({ from: 0, to: 600, usual: 8, says: "Smallest saving that is worth a finding" }),
    maxOffsetMm: numberLimit({
      from: 0,
      to: 400,
      usual: 200,
      says: "Furthest that people may start from their usual place",
    }),
    minOrderSavedSeconds: numberLimit({
      from: 1,
      to: 600,
      usual: 15,
      says: "Smallest saving by another order of a block that is worth a finding",
    }),
    maxBlockCount: wholeLimit({ from: 2, to: 10, usual: 8, says: "Most moves in a block for its order to be tried" }),
    maxLoadDifferenceShare: numberLimit({
      from: 0,
      to: 1,
      usual: 0.25,
      says: "How different the load may be where only the springs can change it",
    }),
  }),
  messages: {
    offset:
      "{itemName}: keep {springs} on and start {cm:cm} {way} the anchor. That keeps the load and saves {savedSeconds} of changes.",
    keep: "{itemName}: keep {springs} on. The move allows it, and that saves {savedSeconds} of changes.",
    order:
      "Another order under {block} saves {savedSeconds} of changes. Try 'Fewer set-ups' there, if the class allows it.",
  },
  check(ctx, limits) {
    const kept = avoidableChanges(ctx.plan, ctx.steps, limits)
      .filter(({ savedSeconds }) => savedSeconds >= limits.minSavedSeconds)
      .map((found) => findingOf(ctx, found));
    return [...kept, ...betterOrders(ctx, limits)];
  },
});

export const changeCouldBeAvoidedExamples = (): RuleExamples => ({ pass: passes(), fail: failures() });

const passes = (): RuleExamples["pass"] => [
  { say: "the springs stay", plan: squats({ light: 3 }) },
  { say: "one light is far lighter than three: chosen on purpose", plan: squats({ light: 1 }) },
  { say: "nearer to the anchor the cable would hang loose", plan: rows(3, 2) },
  {
    say: "the springs do not change back",
    plan: examplePlan(
      [exampleMove("a"), exampleMove("b", { springs: { light: 2 } }), exampleMove("c", { springs: { light: 3 } })],
      {
        moves,
      },
    ),
  },
];

const failures = (): RuleExamples["fail"] => [
  {
    say: "three light for one pair, between moves on two: starting 14 cm further out does the same",
    plan: rows(2, 3),
    expect: ["offset"],
  },
  {
    say: "springs and facing change back and forth under one heading",
    plan: examplePlan(
      [
        { id: "h", kind: "heading", title: "Legs and back" },
        exampleMove("a", { springs: { heavy: 1 } }),
        exampleMove("b", { move: "press", springs: { light: 3 } }),
        exampleMove("c", { springs: { heavy: 1 }, seconds: 40 }),
        exampleMove("d", { move: "press", springs: { light: 3 }, seconds: 40 }),
      ],
      { moves: exampleMoves },
    ),
    expect: ["order"],
  },
  {
    say: "a spring that the move does not take, between moves on springs that it does",
    plan: squats({ heavy: 2 }),
    expect: ["keep"],
  },
];

type Message = "offset" | "keep" | "order";

/** Only short blocks, since this runs at every key press. "Fewer set-ups" tries longer ones. */
function betterOrders({ plan }: RuleContext, limits: { minOrderSavedSeconds: number; maxBlockCount: number }) {
  return headingsOf(plan.items, limits.maxBlockCount).flatMap((heading): Found<Message>[] => {
    const order = bestOrder(plan, heading.id, limits.minOrderSavedSeconds);
    if (!order.ok || order.before - order.after < limits.minOrderSavedSeconds) return [];
    const values = { block: itemName(plan, heading), savedSeconds: order.before - order.after };
    return [{ message: "order", items: [heading.id], values }];
  });
}

/** Headings over at least two and at most `most` moves. */
function headingsOf(items: readonly PlanItem[], most: number): PlanItem[] {
  const blocks: { heading: PlanItem; moves: number }[] = [];
  for (const item of items) {
    const block = blocks.at(-1);
    if (item.kind === "heading") blocks.push({ heading: item, moves: 0 });
    else if (item.kind === "move" && block) block.moves++;
  }
  return blocks.filter(({ moves }) => moves >= 2 && moves <= most).map(({ heading }) => heading);
}

function findingOf({ plan }: RuleContext, { items, springs, offsetMm, movedMm, savedSeconds }: AvoidableChange) {
  const [first] = items;
  const name = first ? (items.length > 1 ? moveName(plan, first) : itemName(plan, first)) : "";
  const values = {
    itemName: name,
    springs: springWords(plan.equipment, springs),
    keep: springs,
    offsetMm,
    cm: Math.abs(movedMm) / 10,
    way: movedMm > 0 ? "further from" : "nearer to",
    savedSeconds,
  };
  const message = offsetMm === null || movedMm === 0 ? ("keep" as const) : ("offset" as const);
  return { message, items: items.map(({ id }) => id), values } satisfies Found;
}
