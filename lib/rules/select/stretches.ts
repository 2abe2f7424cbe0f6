/** Stretches of work with no rest in them. */
import type { PlacedMove, RuleContext } from "../types.ts";

export interface WorkStretch {
  /** At least one. */
  readonly moves: readonly [PlacedMove, ...PlacedMove[]];
  /** Seconds of work, the changes between them not counted. */
  readonly seconds: number;
}

/**
 * Neighbouring move items that all work so. A pause breaks a stretch, and so does a change of `restSeconds` or more;
 * a heading does not.
 */
export function workStretches(
  { plan, moves }: RuleContext,
  works: (placed: PlacedMove) => boolean,
  restSeconds: number,
): WorkStretch[] {
  const stretches: WorkStretch[] = [];
  let last: PlacedMove | undefined;
  for (const placed of moves) {
    const rested = last === undefined || hasRested(plan.items, last, placed, restSeconds);
    last = placed;
    if (!works(placed)) {
      last = undefined;
      continue;
    }
    const open = rested ? undefined : stretches.pop();
    const seconds = Math.round(((open?.seconds ?? 0) + placed.item.seconds) * 1e9) / 1e9;
    stretches.push({ moves: open ? [...open.moves, placed] : [placed], seconds });
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
