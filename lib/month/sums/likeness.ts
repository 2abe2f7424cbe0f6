/**
 * How alike two plans are, 0..1: shared seconds of moves (weighted Jaccard, Ružička) and shared shares of muscle groups, half
 * each. The definition is the month file's; the names of the measures are from memory.
 */
import type { PlanFacts } from "../types.ts";
import { type PlanWork, planWork } from "./plan-work.ts";

/** Null when either has no move with seconds. Symmetric to the last bit; equal plans 1, nothing shared 0. */
export function planLikeness(planA: PlanFacts, planB: PlanFacts): number | null {
  const [a, b] = [planWork(planA), planWork(planB)];
  if (a.moves.length === 0 || b.moves.length === 0) return null;
  const moves = sharedMoves(a.moves, b.moves);
  return a.seconds > 0 && b.seconds > 0 ? (moves + sharedGroups(a, b)) / 2 : moves;
}

/** Walks both lists by id at once: a month asks this for every two neighbours, a fill for every choice. */
function sharedMoves(a: PlanWork["moves"], b: PlanWork["moves"]): number {
  let [least, most, i, k] = [0, 0, 0, 0];
  while (i < a.length || k < b.length) {
    const [x, y] = [a[i], b[k]];
    if (y === undefined || (x !== undefined && x.id < y.id)) {
      most += x?.seconds ?? 0;
      i++;
    } else if (x === undefined || y.id < x.id) {
      most += y.seconds;
      k++;
    } else {
      least += Math.min(x.seconds, y.seconds);
      most += Math.max(x.seconds, y.seconds);
      i++;
      k++;
    }
  }
  return least / most;
}

function sharedGroups(a: PlanWork, b: PlanWork): number {
  return a.byGroup.reduce((sum, s, i) => sum + Math.min(s / a.seconds, (b.byGroup[i] ?? 0) / b.seconds), 0);
}
