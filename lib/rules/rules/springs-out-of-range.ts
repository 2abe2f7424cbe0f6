import { forceN, travelMm, worksSprings } from "#lib/load/load.ts";
import { itemName, springLabel } from "#lib/plan/format.ts";
import { own, springOf } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { defineRule } from "../define/define-rule.ts";
import { exampleEquipment, exampleMove, exampleMoves, examplePlan } from "../define/example-plan.ts";
import { limits } from "../define/limit-fields.ts";
import type { Found, PlacedMove, RuleExamples } from "../define/types.ts";

const limited = (light: number, there = 4, heavy = 0) =>
  examplePlan([exampleMove("a", { springs: { light, heavy } })], {
    moves: { squat: { ...exampleMoves.squat, springs: { min: { light: 1 }, max: { light: 3, heavy: 0 } } } },
    equipment: {
      ...exampleEquipment,
      springs: exampleEquipment.springs.map((spring) => (spring.id === "light" ? { ...spring, count: there } : spring)),
    },
  });

/** Two light ones on a move that the library wants felt within these newtons. */
const loaded = (loadN: [number, number]) =>
  examplePlan([exampleMove("a", { springs: { light: 2 } })], { moves: { squat: { ...exampleMoves.squat, loadN } } });

export const springsOutOfRange = defineRule({
  id: "springs-out-of-range",
  reads: "item",
  title: "The springs are lighter or heavier than the move is meant for",
  why: "Too light, and the carriage runs away under people; too heavy, and they pull with their backs.",
  fix: "Choose springs within the move's range, or change the range in the library.",
  level: "look",
  source: "the move's own ranges of springs and load in the studio's library, and the room's springs as measured",
  limits: limits({}),
  messages: {
    light:
      "{itemName}: {countInWords} {spring} on, and the move needs at least {leastInWords}. Add {differenceInWords}.",
    heavy:
      "{itemName}: {countInWords} {spring} on, and the move takes at most {mostInWords}. Take off {differenceInWords}.",
    none: "{itemName}: {countInWords} {spring} on, and this move does not use that spring. Take off {differenceInWords}.",
    underLoad:
      "{itemName}: {force:N} half-way, and the library asks for {least:force} to {most:N}. Add springs, or start further out.",
    overLoad:
      "{itemName}: {force:N} half-way, and the library asks for {least:force} to {most:N}. Take springs off, or start nearer.",
  },
  check({ plan, moves }) {
    return moves.flatMap((placed): Found<Message>[] => {
      const counted = countsOutOfRange(plan, placed);
      return counted.length > 0 ? counted : loadOutOfRange(plan, placed);
    });
  },
});

export const springsOutOfRangeExamples = (): RuleExamples => ({
  pass: [
    { say: "two light where one to three are meant", plan: limited(2) },
    { say: "as many newtons as the library asks for", plan: loaded([60, 90]) },
    { say: "a move with no range", plan: examplePlan([exampleMove("a", { springs: {} })]) },
    { say: "more than the machine has, which is left to another rule", plan: limited(5, 3) },
  ],
  fail: [
    { say: "none where the move needs one", plan: limited(0), expect: ["light"] },
    { say: "four where the move takes three", plan: limited(4), expect: ["heavy"] },
    { say: "a heavy one where there should be none", plan: limited(2, 4, 1), expect: ["none"] },
    {
      say: "less than the library asks for, though every number of springs is allowed",
      plan: loaded([100, 120]),
      expect: ["underLoad"],
    },
    { say: "more than the library asks for", plan: loaded([5, 20]), expect: ["overLoad"] },
  ],
});

type Message = "light" | "heavy" | "none" | "underLoad" | "overLoad";

/** Springs that the machine lacks are left to `springs-not-there`: the load without them was not chosen by anybody. */
function loadOutOfRange(plan: Plan, { item, move: library }: PlacedMove): Found<Message>[] {
  if (!library?.loadN || !worksSprings(library)) return [];
  if (Object.entries(item.springs).some(([id, n]) => n > (springOf(plan, id)?.count ?? 0))) return [];
  const [least, most] = library.loadN;
  const [from, to] = travelMm(plan, library);
  const force = forceN(plan.equipment, item.springs, { xMm: (from + to) / 2, offsetMm: item.offsetMm ?? 0 });
  if (!Number.isFinite(force) || (force >= least && force <= most)) return [];
  const values = { itemName: itemName(plan, item), force: Math.round(force), least, most };
  return [{ message: force < least ? "underLoad" : "overLoad", items: [item.id], about: "load", values }];
}

function countsOutOfRange(plan: Plan, placed: PlacedMove): Found<Message>[] {
  return bounds(placed).flatMap(({ id, count, least, most }): Found<Message>[] => {
    const spring = springLabel(plan.equipment, id);
    const values = { itemName: itemName(plan, placed.item), spring, springId: id, count, least, most };
    const items = [placed.item.id];
    if (count < least)
      return [{ message: "light", items, about: id, values: { ...values, difference: least - count } }];
    const there = springOf(plan, id)?.count ?? 0;
    if (most !== null && Math.min(count, there) > most) {
      const message = most === 0 ? "none" : "heavy";
      return [{ message, items, about: id, values: { ...values, difference: count - most } }];
    }
    return [];
  });
}

function bounds({ item, move: library }: PlacedMove) {
  const { min, max } = library?.springs ?? {};
  const ids = [...new Set([...Object.keys(min ?? {}), ...Object.keys(max ?? {})])].sort();
  return ids.map((id) => ({
    id,
    count: own(item.springs, id) ?? 0,
    least: own(min, id) ?? 0,
    most: own(max, id) ?? null,
  }));
}
