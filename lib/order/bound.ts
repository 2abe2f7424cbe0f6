/** Seconds below which no order can come: when one reaches them, it is proven the best. */
import type { Sequencing } from "./sequencing.ts";

/** Above this every pair of units would take too long to look at: the bound is then 0. */
const MOST_UNITS = 300;

/** Whatever comes right before a unit, it costs at least the cheapest; and so for whatever comes right after. */
export function lowerBound(problem: Sequencing): number {
  if (problem.count > MOST_UNITS) return 0;
  return Math.max(
    cheapest(problem, (unit, other) => problem.seconds(other, unit)),
    cheapest(problem, problem.seconds),
  );
}

/** Sum over all units and one end of the least seconds between each and any other. */
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
