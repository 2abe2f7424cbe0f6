/**
 * The cheapest times whose sum lies between two values: dynamic programming over the seconds given out, a pair being one
 * variable whose time counts twice. Only partial sums that can still lead to a best answer are kept: at a suitable price for
 * each second, the cost above the cheapest choices adds up item by item, so a sum that exceeds a bound is dropped. The bound
 * grows until an answer lies below it, and that answer is the exact optimum.
 */
import { latticeOf } from "./lattice.ts";
import { choicesWithin, mostAbove, type PricedTime, priceFor } from "./price.ts";
import { settleTies } from "./settle-ties.ts";
import { EQUAL, type Stage } from "./stage.ts";
import type { Variable } from "./values.ts";

const FIRST_GAP = 3;
const WIDER = 4;

/** Seconds of each variable, in their order: their sum is from `from` to `to`. Undefined when there are none. */
export function bestSum(variables: readonly Variable[], from: number, to: number): number[] | undefined {
  if (variables.length === 0) return from <= 1e-6 && to >= -1e-6 ? [] : undefined;
  const lattice = latticeOf(variables);
  if (!lattice || lattice.least > to + 1e-6 || lattice.greatest < from - 1e-6) return undefined;
  const { unit, least, greatest } = lattice;
  const first = Math.max(0, Math.ceil((from - least) / unit - 1e-6));
  const last = Math.min(Math.round((greatest - least) / unit), Math.floor((to - least) / unit + 1e-6));
  if (first > last) return undefined;
  const price = priceFor(variables, least + first * unit, least + last * unit);
  const end = widest(variables, price);
  for (let gap = FIRST_GAP; ; gap = Math.min(gap * WIDER, end)) {
    const sums = { least, unit, first, last };
    const found = withinGap(variables, { price, gap, sums });
    if (found) return found;
    if (gap >= end) return undefined;
  }
}

interface Search {
  readonly price: number;
  readonly gap: number;
  /** In units above the least sum; `least` and `unit` in seconds. */
  readonly sums: { readonly least: number; readonly unit: number; readonly first: number; readonly last: number };
}

/** More than any answer can cost above the cheapest choices. */
const widest = (variables: readonly Variable[], price: number): number =>
  variables.reduce((sum, v) => sum + mostAbove(v, price), FIRST_GAP);

function withinGap(variables: readonly Variable[], { price, gap, sums }: Search): number[] | undefined {
  const choices = variables.map((v) => choicesWithin(v, price, gap + 1e-6));
  const stages = stagesOf(variables, choices, { gap: gap + 1e-6, sums });
  const start = stages[0];
  if (!start) return undefined;
  // What one more second in the sum costs or saves on top of the prices in the choices.
  const shift = (units: number): number => price * (units - (price > 0 ? sums.first : sums.last)) * sums.unit;
  let [best, found] = [gap, -1];
  for (let units = sums.last; units >= sums.first; units--) {
    const cost = (start.rest[units - start.from] ?? Number.POSITIVE_INFINITY) + shift(units);
    // Of equally cheap sums the larger comes first.
    if (found < 0 ? cost <= best : cost < best - EQUAL) [best, found] = [cost, units];
  }
  return found < 0 ? undefined : settleTies(variables, stages, found);
}

interface Bounds {
  readonly gap: number;
  readonly sums: Search["sums"];
}

/** Built from the last variable backwards; each stage keeps only sums that earlier variables can complete. */
function stagesOf(
  variables: readonly Variable[],
  lists: readonly (readonly PricedTime[])[],
  { gap, sums }: Bounds,
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
  let next: Stage = { choices: [], from: 0, rest: Float64Array.of(0) };
  for (let i = variables.length - 1; i >= 0; i--) {
    const [fewest, most] = given[i] ?? [0, 0];
    next = stageBefore(next, counted[i] ?? [], { gap, low: sums.first - most, high: sums.last - fewest });
    stages.unshift(next);
  }
  return stages;
}

const leastOf = (v: Variable): number => latticeOf([v])?.least ?? 0;
const unitsOf = (seconds: number, least: number, v: Variable | undefined, unit: number): number =>
  Math.round((seconds * (v?.spots.length ?? 1) - least) / unit);

function stageBefore(
  next: Stage,
  choices: Stage["choices"],
  { gap, low, high }: { readonly gap: number; readonly low: number; readonly high: number },
): Stage {
  const from = Math.max(low, next.from + (choices[0]?.units ?? 0));
  const to = Math.min(high, next.from + next.rest.length - 1 + (choices.at(-1)?.units ?? 0));
  const rest = new Float64Array(Math.max(0, to - from + 1)).fill(Number.POSITIVE_INFINITY);
  for (let s = 0; s < next.rest.length; s++) {
    const after = next.rest[s] ?? Number.POSITIVE_INFINITY;
    if (after > gap) continue;
    for (const { units, above } of choices) {
      const at = next.from + s + units - from;
      const cost = after + above;
      if (cost <= gap && cost < (rest[at] ?? Number.NEGATIVE_INFINITY)) rest[at] = cost;
    }
  }
  return { choices, from, rest };
}
