/** Solves a sequencing problem, exactly or by search. */
import { lowerBound } from "./bound.ts";
import { exactSequence, MOST_EXACT } from "./exact.ts";
import { searchSequence } from "./search.ts";
import type { Sequence, Sequencing } from "./sequencing.ts";

export interface SolvedOrder extends Sequence {
  /** False: better orders may exist. */
  readonly proven: boolean;
}

/**
 * Exact up to 16 units; above that the best found, proven only when it reaches a bound. Null when no order keeps the
 * constraints.
 */
export function solveOrder(problem: Sequencing): SolvedOrder | null {
  if (problem.count <= MOST_EXACT) {
    const sequence = exactSequence(problem);
    return sequence && { ...sequence, proven: true };
  }
  const bound = lowerBound(problem);
  const sequence = searchSequence(problem, bound);
  return sequence && { ...sequence, proven: sequence.seconds <= bound };
}
