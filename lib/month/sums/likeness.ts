/**
 * How alike two plans are, 0..1: shared seconds of moves (weighted Jaccard, Ružička) and shared shares of muscle groups, half
 * each. The definition is the month file's; the names of the measures are from memory.
 */
import type { KnownPlan } from "../types.ts";
import { type PlanWork, planWork } from "./plan-work.ts";

/** Null when either has no move with seconds. Symmetric; equal plans 1, nothing shared 0. */
export function likeness(of: KnownPlan, other: KnownPlan): number | null {
  const [a, b] = [planWork(of), planWork(other)];
  if (a.moves.length === 0 || b.moves.length === 0) return null;
  const moves = sharedMoves(a, b);
  return a.seconds > 0 && b.seconds > 0 ? (moves + sharedGroups(a, b)) / 2 : moves;
}

const END = [undefined, 0] as const;

/**
 * Both lists side by side, in the order of the ids, so that both directions give the same number to the last bit. A fill
 * may ask for a million pairs: nothing is made here.
 */
function sharedMoves({ moves: a }: PlanWork, { moves: b }: PlanWork): number {
  let [least, most, i, j] = [0, 0, 0, 0];
  while (i < a.length || j < b.length) {
    const [[idA, s], [idB, t]] = [a[i] ?? END, b[j] ?? END];
    const both = idA === idB;
    const first = both || idB === undefined || (idA !== undefined && idA < idB);
    least += both ? Math.min(s, t) : 0;
    most += both ? Math.max(s, t) : first ? s : t;
    if (first) i++;
    if (both || !first) j++;
  }
  return least / most;
}

function sharedGroups(a: PlanWork, b: PlanWork): number {
  return a.byGroup.reduce((sum, s, i) => sum + Math.min(s / a.seconds, (b.byGroup[i] ?? 0) / b.seconds), 0);
}
