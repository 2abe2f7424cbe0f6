/**
 * The cheapest times whose sum lies between two values: dynamic programming over the seconds given out, a pair being one
 * variable whose time counts twice. Only partial sums that can still lead to a best answer are kept: at a suitable price for
 * each second, the cost above the cheapest choices adds up item by item, so a sum that exceeds a bound is dropped. The bound
 * grows until an answer lies below it, and that answer is the exact optimum.
 */
import { latticeOf, type SumRange } from "./lattice.ts";
import { choicesWithin, mostAbove, type PricedTime, priceFor } from "./price.ts";
import { reachable } from "./reachable.ts";
import { settleTies } from "./settle-ties.ts";
import { EQUAL, lastStage, type Stage, stageBefore, type Work } from "./stage.ts";
import type { Variable } from "./values.ts";

const FIRST_GAP = 0.5;
const WIDER = 4;
/** A bound at which it is asked whether there is any answer: nearly all are found below. */
const FAR = FIRST_GAP * WIDER ** 3;
/** Steps of arithmetic that one fit may take: about half a second. A class of 60 moves takes some thousands. */
const MOST_WORK = 100_000_000;

/** `too-fine`: the times combine to more sums than can be gone through. */
export type BestSum = { readonly found: readonly number[] } | { readonly none: "impossible" | "too-fine" };

/** Seconds of each variable, in their order: their sum is from `from` to `to`. */
export function bestSum(variables: readonly Variable[], from: number, to: number, most = MOST_WORK): BestSum {
  if (variables.length === 0) return from <= 1e-6 && to >= -1e-6 ? { found: [] } : { none: "impossible" };
  const sums = sumsBetween(variables, from, to);
  if (!sums) return { none: "impossible" };
  const price = priceFor(variables, sums.least + sums.first * sums.unit, sums.least + sums.last * sums.unit);
  const end = widest(variables, price);
  const work: Work = { left: most };
  for (let gap = FIRST_GAP; ; gap = Math.min(gap * WIDER, end)) {
    const found = withinGap(variables, { price, gap, sums }, work);
    if (found) return { found };
    if (work.left < 0) return { none: "too-fine" };
    if (gap >= end || (gap === FAR && !reachable(variables, sums))) return { none: "impossible" };
  }
}

function sumsBetween(variables: readonly Variable[], from: number, to: number): SumRange | null {
  const lattice = latticeOf(variables);
  if (!lattice || lattice.least > to + 1e-6 || lattice.greatest < from - 1e-6) return null;
  const { unit, least, greatest } = lattice;
  const first = Math.max(0, Math.ceil((from - least) / unit - 1e-6));
  const last = Math.min(Math.round((greatest - least) / unit), Math.floor((to - least) / unit + 1e-6));
  return first > last ? null : { least, unit, first, last };
}

interface Search {
  readonly price: number;
  readonly gap: number;
  readonly sums: SumRange;
}

/** More than any answer can cost above the cheapest choices. */
const widest = (variables: readonly Variable[], price: number): number =>
  variables.reduce((sum, v) => sum + mostAbove(v, price), FIRST_GAP);

function withinGap(variables: readonly Variable[], { price, gap, sums }: Search, work: Work): number[] | undefined {
  const choices = variables.map((v) => choicesWithin(v, price, gap + 1e-6));
  const stages = stagesOf(variables, choices, { gap: gap + 1e-6, sums }, work);
  const start = stages[0];
  if (!start || work.left < 0) return undefined;
  // What one more second in the sum costs or saves on top of the prices in the choices.
  const shift = (units: number): number => price * (units - (price > 0 ? sums.first : sums.last)) * sums.unit;
  let best = gap;
  const ends = (visit: (units: number, cost: number) => void): void =>
    start.rest.each((units, above) => {
      if (units >= sums.first && units <= sums.last) visit(units, above + shift(units));
    });
  ends((_, cost) => {
    best = Math.min(best, cost);
  });
  // Of equally cheap sums the largest is taken.
  let found = -1;
  ends((units, cost) => {
    if (cost <= best + EQUAL && units > found) found = units;
  });
  return found < 0 ? undefined : settleTies(variables, stages, found);
}

interface Bounds {
  readonly gap: number;
  readonly sums: SumRange;
}

/** Built from the last variable backwards; each stage keeps only sums that earlier variables can complete. */
function stagesOf(
  variables: readonly Variable[],
  lists: readonly (readonly PricedTime[])[],
  { gap, sums }: Bounds,
  work: Work,
): Stage[] {
  const leasts = variables.map(leastOf);
  const counted = lists.map((list, i) =>
    list.map((choice) => ({ ...choice, units: unitsOf(choice.seconds, leasts[i] ?? 0, variables[i], sums.unit) })),
  );
  // The least and the most units that the variables before each one can give.
  let before: readonly [number, number] = [0, 0];
  const given = counted.map((list) => {
    const own = before;
    before = [own[0] + (list[0]?.units ?? 0), own[1] + (list.at(-1)?.units ?? 0)];
    return own;
  });
  const stages: Stage[] = [];
  let next = lastStage();
  for (let i = variables.length - 1; i >= 0 && work.left >= 0; i--) {
    const [fewest, most] = given[i] ?? [0, 0];
    next = stageBefore(next, counted[i] ?? [], { gap, low: sums.first - most, high: sums.last - fewest }, work);
    stages.push(next);
  }
  return stages.reverse();
}

const leastOf = (v: Variable): number => latticeOf([v])?.least ?? 0;
const unitsOf = (seconds: number, least: number, v: Variable | undefined, unit: number): number =>
  Math.round((seconds * (v?.spots.length ?? 1) - least) / unit);
