/** The best order of a sequencing problem, whichever way it is found. */
import { lowerBound } from "./bound.ts";
import { exactSequence, MOST_EXACT } from "./exact.ts";
import { searchSequence } from "./search.ts";
import type { Sequence, Sequencing } from "./sequencing.ts";

export interface SolvedOrder extends Sequence {
  /** False: better orders may exist. */
  readonly proven: boolean;
}

/** Exact up to 16 units; above that the best found, proven only when it reaches a bound. Null: no order keeps the rules. */
export function solveOrder(problem: Sequencing): SolvedOrder | null {
  if (problem.count <= MOST_EXACT) {
    const sequence = exactSequence(problem);
    return sequence && { ...sequence, proven: true };
  }
  const bound = lowerBound(problem);
  const sequence = searchSequence(problem, bound);
  return sequence && { ...sequence, proven: sequence.seconds <= bound };
}
