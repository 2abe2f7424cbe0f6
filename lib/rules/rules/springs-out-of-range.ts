import { z } from "zod";
import { itemName, springLabel } from "#lib/plan/format.ts";
import { own, springOf } from "#lib/plan/lookup.ts";
import { defineRule } from "../define-rule.ts";
import { exampleEquipment, exampleMoves, examplePlan, move } from "../examples/build.ts";
import type { Found, PlacedMove } from "../types.ts";

const limited = (light: number, there = 4, heavy = 0) =>
  examplePlan([move("a", { springs: { light, heavy } })], {
    moves: { squat: { ...exampleMoves.squat, springs: { min: { light: 1 }, max: { light: 3, heavy: 0 } } } },
    equipment: {
      ...exampleEquipment,
      springs: exampleEquipment.springs.map((spring) => (spring.id === "light" ? { ...spring, count: there } : spring)),
    },
  });

export const springsOutOfRange = defineRule({
  id: "springs-out-of-range",
  title: "The springs are lighter or heavier than the move is meant for",
  why: "Too light and the carriage runs away under people, too heavy and they pull with their backs.",
  fix: "Choose springs within the move's range, or change the range in the library.",
  level: "look",
  source: "the move's own range in the studio's library",
  limits: z.strictObject({}),
  messages: {
    light: "{itemName} has {count} {spring} where the move needs at least {least}: add {difference}.",
    heavy: "{itemName} has {count} {spring} where the move takes at most {most}: take off {difference}.",
    none: "{itemName} has {count} {spring} on and the move takes none of it: take off {difference}.",
  },
  examples: {
    pass: [
      { say: "two light where one to three are meant", plan: limited(2) },
      { say: "a move with no range", plan: examplePlan([move("a", { springs: {} })]) },
      { say: "more than the machine has is another rule's, when what it has would do", plan: limited(5, 3) },
    ],
    fail: [
      { say: "none where one is the least", plan: limited(0), expect: ["light"] },
      { say: "four where three are the most", plan: limited(4), expect: ["heavy"] },
      { say: "a heavy one where there should be none", plan: limited(2, 4, 1), expect: ["none"] },
    ],
  },
  check({ plan, moves }) {
    return moves.flatMap((placed) =>
      bounds(placed).flatMap(({ id, count, least, most }): Found<"light" | "heavy" | "none">[] => {
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
      }),
    );
  },
});

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
