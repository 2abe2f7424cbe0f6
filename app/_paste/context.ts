/** The studio that a list is read for: its library and machines, and what adding by hand would choose. */
import { sidesOf } from "#app/_plan/acts.ts";
import { startingSeconds } from "#app/_plan/starting-seconds.ts";
import { startingSprings } from "#app/_plan/starting-springs.ts";
import type { StudioContext } from "#lib/doc/from-studio.ts";
import type { PasteContext } from "#lib/paste/types.ts";
import type { Plan } from "#lib/plan/schema.ts";

/** What came with the plan wins over the studio's. Moves that were taken out of the library are not found any more. */
export function pasteContext(studio: StudioContext, plan: Pick<Plan, "moves" | "equipment">): PasteContext {
  const gone = new Set(studio.archived ?? []);
  const offered = Object.entries(studio.moves).filter(([id]) => !gone.has(id));
  return {
    moves: { ...Object.fromEntries(offered), ...plan.moves },
    equipment: plan.equipment,
    sidesOf,
    startingSeconds,
    startingSprings: (move) => startingSprings(move, plan.equipment),
  };
}
