/** A lower bound of the seconds of any order. An order that reaches it is proven to be the best. */
import type { Sequencing } from "./sequencing.ts";

/** With more units than this, looking at every pair takes too long, and the bound is 0. */
const MOST_UNITS = 300;

/** Each unit costs at least the cheapest change into it, or the cheapest out of it. */
export function lowerBound(problem: Sequencing): number {
  if (problem.count > MOST_UNITS) return 0;
  return Math.max(
    cheapest(problem, (unit, other) => problem.seconds(other, unit)),
    cheapest(problem, problem.seconds),
  );
}

/** The sum, over all units and one end, of the least seconds between each and any other. */
function cheapest(problem: Sequencing, seconds: (unit: number, other: number) => number): number {
  const units = Array.from({ length: problem.count + 1 }, (_, u) => u).filter((u) => !problem.silent[u]);
  if (units.length === 1) return problem.seconds(problem.count, problem.count);
  let sum = 0;
  for (const unit of units) {
    let least = Number.POSITIVE_INFINITY;
    for (const other of units) if (other !== unit) least = Math.min(least, seconds(unit, other));
    sum += least;
  }
  return sum;
}
