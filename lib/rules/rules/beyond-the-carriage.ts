import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { offsetWords } from "#lib/formats/units.ts";
import { travelMm, worksSprings } from "#lib/load/load.ts";
import { itemName, plainNumber } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, exampleMoves, examplePlan } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import type { Found, PlacedMove, RuleExamples } from "../define/types.ts";

const travelling = (travel: [number, number]) =>
  examplePlan([exampleMove("a")], { moves: { squat: { ...exampleMoves.squat, travelMm: travel } } });

export const beyondTheCarriage = defineRule({
  id: "beyond-the-carriage",
  reads: "item",
  title: "A move that goes further than the machine, or starts too far away",
  why: "The load is worked out for a travel that the machine does not have, so people feel something else.",
  fix: "Correct the travel in the library or the room's own, or bring the start nearer to the usual place.",
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({
    mostOffsetMm: numberLimit({
      from: 0,
      to: 2000,
      usual: 400,
      says: "Furthest that people may start from a move's usual place",
    }),
  }),
  messages: {
    travel:
      "{itemName}: the library says {toCm:cm} of travel and this room's carriage goes {hasCm:cm}. Correct whichever is wrong.",
    offset:
      "{itemName}: the start is {place:place}, and the limit is {mostCm:cm} from the usual place. Check the number.",
  },
  check({ plan, moves }, { mostOffsetMm }) {
    return moves.flatMap((placed) => [...tooFarOut(plan, placed), ...tooFarOff(plan, placed, mostOffsetMm)]);
  },
});

export const beyondTheCarriageExamples = (): RuleExamples => ({
  pass: [
    { say: "as far as the carriage goes", plan: travelling([0, 1000]) },
    { say: "a hand's width off", plan: examplePlan([exampleMove("a", { offsetMm: 100 })]) },
  ],
  fail: [
    { say: "further than the carriage goes", plan: travelling([0, 1500]), expect: ["travel"] },
    { say: "two metres off", plan: examplePlan([exampleMove("a", { offsetMm: 2000 })]), expect: ["offset"] },
  ],
});

function tooFarOut(plan: Plan, { item, move: library }: PlacedMove): Found<"travel">[] {
  if (!library || !worksSprings(library)) return [];
  const to = travelMm(plan, library)[1];
  const has = plan.equipment.carriageTravelMm;
  if (!(to > has)) return [];
  const values = { itemName: itemName(plan, item), toCm: plainNumber(to / 10), hasCm: plainNumber(has / 10) };
  return [{ message: "travel", items: [item.id], values, about: "travel" }];
}

function tooFarOff(plan: Plan, { item }: PlacedMove, mostMm: number): Found<"offset">[] {
  const offsetMm = item.offsetMm ?? 0;
  if (!(Math.abs(offsetMm) > mostMm)) return [];
  const values = {
    itemName: itemName(plan, item),
    place: offsetWords(offsetMm, STANDARD_FORMATS),
    mostCm: plainNumber(mostMm / 10),
  };
  return [{ message: "offset", items: [item.id], values, about: "offset" }];
}
