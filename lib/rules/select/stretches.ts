/** Stretches of work without a rest. */
import { withoutNoise } from "#lib/numbers/round.ts";
import type { PlacedMove, RuleContext } from "../define/types.ts";

export interface WorkStretch {
  /** At least one. */
  readonly moves: readonly [PlacedMove, ...PlacedMove[]];
  /** Seconds of work, the changes between them not counted. */
  readonly seconds: number;
}

/**
 * Runs of neighbouring move items for which `works` holds. A pause breaks a run, and so does a change of `restSeconds` or
 * more; a heading does not.
 */
export function workStretches(
  { plan, moves }: RuleContext,
  works: (placed: PlacedMove) => boolean,
  restSeconds: number,
): WorkStretch[] {
  const stretches: WorkStretch[] = [];
  let open: { moves: [PlacedMove, ...PlacedMove[]]; seconds: number; last: PlacedMove } | undefined;
  for (const placed of moves) {
    if (!works(placed)) open = undefined;
    else if (open && !hasRested(plan.items, open.last, placed, restSeconds)) {
      open.moves.push(placed);
      open.seconds = withoutNoise(open.seconds + placed.item.seconds);
      open.last = placed;
    } else {
      open = { moves: [placed], seconds: withoutNoise(placed.item.seconds), last: placed };
      stretches.push(open);
    }
  }
  return stretches;
}

function hasRested(
  items: RuleContext["plan"]["items"],
  from: PlacedMove,
  to: PlacedMove,
  restSeconds: number,
): boolean {
  if (to.row.start - to.row.transitionFrom >= restSeconds) return true;
  for (let i = from.index + 1; i < to.index; i++) if (items[i]?.kind === "pause") return true;
  return false;
}
