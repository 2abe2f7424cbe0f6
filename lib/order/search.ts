/**
 * Finds good orders of many units: several starts, swaps of neighbouring stretches while they save seconds, then the same
 * again from a shuffled copy of the best. The same problem always gets the same answer.
 */
import { type ExchangeBudget, improved } from "./improve.ts";
import { seededRandom } from "./random.ts";
import { keepsRules, mayComeNext, type Sequence, type Sequencing, sequenceSeconds } from "./sequencing.ts";

/** From this many units on each swap costs more, and fewer are tried. */
const MANY = 300;
/** Swaps tried before the search ends: some tens of milliseconds. */
const mostWork = (count: number): number => (count > MANY ? 150_000 : 600_000);
const WANDERING_STARTS = 6;
const MOST_SHAKES = 500;
/** Most units compared at each step of building an order, to bound the time with thousands of set-ups. */
const MOST_LOOKED_AT = 40_000;

/** The best order found, or null when the constraints contradict each other. Ends early at `enough` seconds. */
export function searchSequence(problem: Sequencing, enough = 0): Sequence | null {
  const random = seededRandom(problem.count);
  const present = startOrder(problem, (units) => units[0]);
  if (!present) return null;
  const starts = [present, nearestFirst(problem, () => 0)];
  const wandering = problem.count > MANY ? 1 : WANDERING_STARTS;
  for (let i = 0; i < wandering; i++) starts.push(nearestFirst(problem, random));
  const work = { left: mostWork(problem.count) };
  let best: Sequence = { order: present, seconds: sequenceSeconds(problem, present) };
  const keep = (order: readonly number[] | null): void => {
    if (!order || work.left <= 0 || best.seconds <= enough) return;
    const better = improved(problem, order, work);
    const seconds = sequenceSeconds(problem, better);
    if (seconds < best.seconds) best = { order: better, seconds };
  };
  for (const start of starts) keep(start);
  for (let i = 0; i < MOST_SHAKES && work.left > 0 && best.seconds > enough; i++)
    keep(shaken(problem, best.order, { random, work }));
  return best;
}

/** Builds an order from the units that may come next, in ascending order, by choosing among them. */
function startOrder(
  problem: Sequencing,
  choose: (units: readonly number[], last: number) => number | undefined,
): number[] | null {
  const order: number[] = [];
  const done = new Set<number>();
  const left = Array.from({ length: problem.count }, (_, unit) => unit);
  let [place, last] = [0, problem.count];
  while (left.length > 0) {
    const so = { done, place };
    const most = Math.max(8, Math.floor(MOST_LOOKED_AT / problem.count));
    const free: number[] = [];
    for (const unit of left) {
      if (mayComeNext(problem, unit, so)) free.push(unit);
      if (free.length === most) break;
    }
    const unit = choose(free, last);
    if (unit === undefined) return null;
    order.push(unit);
    done.add(unit);
    left.splice(left.indexOf(unit), 1);
    place += problem.sizes[unit] ?? 1;
    if (!problem.silent[unit]) last = unit;
  }
  return order;
}

/** Takes the nearest unit; the second nearest for random numbers from 0.6, the third from 0.9. */
function nearestFirst(problem: Sequencing, random: () => number): number[] | null {
  return startOrder(problem, (units, last) => {
    const costs = units.map((unit) => ({ unit, seconds: problem.silent[unit] ? 0 : problem.seconds(last, unit) }));
    costs.sort((a, b) => a.seconds - b.seconds || a.unit - b.unit);
    const r = random();
    return costs[Math.min(r < 0.6 ? 0 : r < 0.9 ? 1 : 2, costs.length - 1)]?.unit;
  });
}

/** Swaps two random stretches, three times over; null when that breaks the constraints. */
function shaken(
  problem: Sequencing,
  order: readonly number[],
  { random, work }: { random: () => number; work: ExchangeBudget },
): number[] | null {
  let next = [...order];
  for (let i = 0; i < 3; i++) {
    const longest = Math.min(next.length, 12);
    const from = Math.floor(random() * (next.length - 1));
    const middle = from + 1 + Math.floor(random() * Math.min(longest, next.length - from - 1));
    const to = middle + 1 + Math.floor(random() * Math.min(longest, next.length - middle));
    const tried = exchange(next, from, middle, to);
    work.left -= next.length;
    if (to <= next.length && keepsRules(problem, tried)) next = tried;
  }
  return next;
}

function exchange(order: readonly number[], from: number, middle: number, to: number): number[] {
  return [...order.slice(0, from), ...order.slice(middle, to), ...order.slice(from, middle), ...order.slice(to)];
}
