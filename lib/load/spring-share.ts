/** How hard an item's springs make its move, against what the library means it to be. */
import type { Move, MoveItem, Plan } from "#lib/plan/schema.ts";
import { forceN, travelMm } from "./load.ts";

/** Twice the load is not twice as tiring for as long, so the share is held within these (judgement). */
const [LEAST, MOST] = [0.5, 1.5];

/**
 * The load half-way over the middle of the library's range; 1 where no range is known or the muscles work against the body's
 * weight, as in a plank or a lunge, where a lighter spring is not less work.
 */
export function springShare({ equipment }: Pick<Plan, "equipment">, item: MoveItem, move: Move): number {
  if (!move.loadN || !worksAgainstSprings(move)) return 1;
  const [least, most] = move.loadN;
  const [from, to] = travelMm({ equipment }, move);
  const force = forceN(equipment, item.springs, { xMm: (from + to) / 2, offsetMm: item.offsetMm ?? 0 });
  const share = force / ((least + most) / 2);
  return Number.isFinite(share) ? Math.min(MOST, Math.max(LEAST, share)) : 1;
}

/** A handle, a strap, or a press with the feet: what people hold is what pulls. */
function worksAgainstSprings({ resistance, hands, feet, pattern }: Move): boolean {
  if (resistance !== "springs") return false;
  const holds = hands === "handles" || hands === "handles-crossed" || hands === "one-handle" || feet.endsWith("-strap");
  return holds || (pattern === "squat" && (feet === "front-platform" || feet === "back-platform"));
}
