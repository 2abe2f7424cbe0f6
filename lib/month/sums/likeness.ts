/**
 * How alike two plans are, 0..1: shared seconds of moves (weighted Jaccard, Ružička) and shared shares of muscle groups, half
 * each. The definition is the month file's; the names of the measures are from memory.
 */
import type { KnownPlan } from "../types.ts";
import { type PlanWork, planWork } from "./plan-work.ts";

const known = new WeakMap<KnownPlan, WeakMap<KnownPlan, { readonly likeness: number | null }>>();

/** Null when either has no move with seconds. Symmetric; equal plans 1, nothing shared 0. */
export function likeness(a: KnownPlan, b: KnownPlan): number | null {
  let ofA = known.get(a);
  if (!ofA) {
    ofA = new WeakMap();
    known.set(a, ofA);
  }
  let answer = ofA.get(b);
  if (!answer) {
    answer = { likeness: likenessOf(planWork(a), planWork(b)) };
    ofA.set(b, answer);
  }
  return answer.likeness;
}

function likenessOf(a: PlanWork, b: PlanWork): number | null {
  if (a.moves.length === 0 || b.moves.length === 0) return null;
  const moves = sharedMoves(a, b);
  return a.seconds > 0 && b.seconds > 0 ? (moves + sharedGroups(a, b)) / 2 : moves;
}

/** The sums run in the order of the ids, so that both directions give the same number to the last bit. */
function sharedMoves(a: PlanWork, b: PlanWork): number {
  const [ofA, ofB] = [new Map(a.moves), new Map(b.moves)];
  let [least, most] = [0, 0];
  for (const id of [...new Set([...ofA.keys(), ...ofB.keys()])].sort()) {
    const [x, y] = [ofA.get(id) ?? 0, ofB.get(id) ?? 0];
    least += Math.min(x, y);
    most += Math.max(x, y);
  }
  return least / most;
}

function sharedGroups(a: PlanWork, b: PlanWork): number {
  return a.byGroup.reduce((sum, s, i) => sum + Math.min(s / a.seconds, (b.byGroup[i] ?? 0) / b.seconds), 0);
}
