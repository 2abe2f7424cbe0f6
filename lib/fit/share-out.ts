/**
 * Shares a number of grid steps out over single items (one step each) and pairs (two steps, one a side) at the least
 * cost. Each kind is solved by its own ladder of steps. One scan over the number of pair steps joins them, which is enough
 * because the total cost is convex in that number. Ties go by the authors' wishes, earlier items first.
 */
import { compareWithTwo, type GridStep, type Ladder, ladder, type TickVariable } from "./steps.ts";

export interface Shares {
  readonly grid: number;
  readonly singles: readonly TickVariable[];
  readonly pairs: readonly TickVariable[];
}

/** Value of each variable in grid steps. */
type Values = ReadonlyMap<TickVariable, number>;

/**
 * The least-cost values that add up to `units` grid steps above all the lower bounds, a pair's counting twice; undefined
 * when no values do. Of equally cheap answers, the one in which the first item is nearest to its wish, then the second, and
 * so on. If a choice is still left (wishes half-way between two values), the earlier item gets the shorter time.
 */
export function shareOut(shares: Shares, units: number): Values | undefined {
  const most = { singles: stepsOf(shares.singles), pairs: stepsOf(shares.pairs) };
  const fewest = Math.max(0, Math.ceil((units - most.singles) / 2));
  const greatest = Math.min(most.pairs, Math.floor(units / 2));
  if (units < 0 || fewest > greatest) return undefined;
  const singles = ladder(shares.singles, units - 2 * fewest);
  const pairs = ladder(shares.pairs, greatest);
  let best: Values | undefined;
  for (const taken of cheapestSplits({ singles: singles.steps, pairs: pairs.steps, units }, fewest, greatest)) {
    const values = new Map([...pick(singles, units - 2 * taken, shares.grid), ...pick(pairs, taken, shares.grid)]);
    if (!best || nearer(values, best, shares)) best = values;
  }
  return best;
}

const stepsOf = (variables: readonly TickVariable[]): number => variables.reduce((sum, v) => sum + v.high - v.low, 0);

interface Ladders {
  readonly singles: readonly GridStep[];
  readonly pairs: readonly GridStep[];
  readonly units: number;
}

/** Every number of pair steps with the least cost; they are neighbours, because the cost is convex. */
function cheapestSplits(ladders: Ladders, fewest: number, greatest: number): number[] {
  let taken = fewest;
  while (taken < greatest && oneMore(ladders, taken) < 0) taken++;
  const splits = [taken];
  for (; taken < greatest && oneMore(ladders, taken) === 0; taken++) splits.push(taken + 1);
  return splits;
}

/** The sign of the change in cost when a pair's step replaces the two most expensive single steps. */
function oneMore({ singles, pairs, units }: Ladders, taken: number): number {
  const single = units - 2 * taken;
  const [pair, one, two] = [pairs[taken], singles[single - 1], singles[single - 2]];
  return pair && one && two ? compareWithTwo(pair, one, two) : 1;
}

/** The values after the cheapest `count` steps of one kind; among equal steps, those that the wishes prefer. */
function pick({ variables, steps, levels }: Ladder, count: number, grid: number): Map<TickVariable, number> {
  let from = count;
  let to = count;
  const level = levels[count];
  if (level !== undefined && levels[count - 1] === level) {
    while (levels[from - 1] === level) from--;
    while (levels[to] === level) to++;
  }
  const values = variables.map((v) => v.low);
  for (let i = 0; i < from; i++) grow(values, steps[i]);
  // The steps of one variable differ in cost, so equal ones belong to different variables.
  for (const step of prefer(steps.slice(from, to), { variables, grid, count: count - from })) grow(values, step);
  return new Map(variables.map((v, i) => [v, values[i] ?? v.low]));
}

function grow(values: number[], step: GridStep | undefined): void {
  if (step) values[step.variable] = step.from + 1;
}

interface Choice {
  readonly variables: readonly TickVariable[];
  readonly grid: number;
  readonly count: number;
}

/**
 * Chooses `count` of equally expensive steps, item by item in plan order: an item that is nearer to its wish with the step
 * takes it, one that is nearer without it does not, as long as the count works out.
 */
function prefer(steps: readonly GridStep[], { variables, grid, count }: Choice): GridStep[] {
  const open = new Set(steps);
  const taken: GridStep[] = [];
  const settle = (step: GridStep, wanted: boolean): void => {
    const left = count - taken.length;
    const take = wanted ? left > 0 : left === open.size;
    if (take) taken.push(step);
    open.delete(step);
  };
  const spots = steps.flatMap((step) => (variables[step.variable]?.spots ?? []).map((spot) => ({ step, spot })));
  for (const { step, spot } of spots.sort((a, b) => a.spot.place - b.spot.place)) {
    const further = grid * (2 * step.from + 1) - 2 * spot.wish;
    if (further !== 0 && open.has(step)) settle(step, further < 0);
  }
  for (const { step } of spots) if (open.has(step)) settle(step, false);
  return taken;
}

/** Whether `a` is the better of two equally cheap answers. */
function nearer(a: Values, b: Values, { grid, singles, pairs }: Shares): boolean {
  const spots = [...singles, ...pairs].flatMap((v) => v.spots.map(({ place, wish }) => ({ v, place, wish })));
  spots.sort((x, y) => x.place - y.place);
  const value = (of: Values, v: TickVariable): number => grid * (of.get(v) ?? v.low);
  for (const { v, wish } of spots) {
    const difference = Math.abs(value(a, v) - wish) - Math.abs(value(b, v) - wish);
    if (difference !== 0) return difference < 0;
  }
  const changed = spots.find(({ v }) => value(a, v) !== value(b, v));
  return changed !== undefined && value(a, changed.v) < value(b, changed.v);
}
