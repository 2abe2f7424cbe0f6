/** The least costs of the last variables of a fit by the sums they give out: built backwards, one stage a variable. */
import type { PricedTime } from "./price.ts";

/**
 * Costs nearer than this count as equal. Each is a sum of at most some thousands of double operations on numbers below
 * 1e6, exact to about 1e-9 at worst and 1e-12 in real classes. A smaller real difference counts as a tie.
 */
export const EQUAL = 1e-9;

export interface Choice extends PricedTime {
  /** What it adds to the sum above the variable's least, in units. */
  readonly units: number;
}

/** One variable and all later ones. */
export interface Stage {
  readonly choices: readonly Choice[];
  /** The least cost above the cheapest choices, by the units given out; Infinity where impossible or not worth keeping. */
  readonly rest: Sums;
}

interface Sums {
  at(units: number): number;
  /** The least and the greatest sum that may have a cost. */
  readonly from: number;
  readonly to: number;
  /** Sums with a cost. */
  each(visit: (units: number, cost: number) => void): void;
}

/** What is left of the work that one search may do; below 0 it gives up. */
export interface Work {
  left: number;
}
/** A sum found in a map costs about as much as this many in an array. */
const MAP_COST = 12;
/** Longest array; sums in finer units are rare among so many and go to a map. */
const LONGEST = 1 << 16;

export interface StageBounds {
  /** The most that a sum may cost above the cheapest choices. */
  readonly gap: number;
  /** Sums that earlier variables can complete, in units. */
  readonly low: number;
  readonly high: number;
}

export const lastStage = (): Stage => ({ choices: [], rest: arraySums(0, Float64Array.of(0)) });

/** The stage before `next`. */
export function stageBefore(next: Stage, choices: readonly Choice[], bounds: StageBounds, work: Work): Stage {
  const from = Math.max(bounds.low, next.rest.from + (choices[0]?.units ?? 0));
  const to = Math.min(bounds.high, next.rest.to + (choices.at(-1)?.units ?? 0));
  const fine = to - from >= LONGEST;
  const rest = fine
    ? inMap(next.rest, choices, bounds, work)
    : inArray(next.rest, choices, { ...bounds, from, to }, work);
  return { choices, rest };
}

function inArray(
  next: Sums,
  choices: readonly Choice[],
  { gap, from, to }: { readonly gap: number; readonly from: number; readonly to: number },
  work: Work,
): Sums {
  const rest = new Float64Array(Math.max(0, to - from + 1)).fill(Number.POSITIVE_INFINITY);
  work.left -= rest.length;
  next.each((sum, after) => {
    work.left -= choices.length;
    if (work.left < 0) return;
    for (const { units, above } of choices) {
      const at = sum + units - from;
      const cost = after + above;
      if (cost <= gap && cost < (rest[at] ?? Number.NEGATIVE_INFINITY)) rest[at] = cost;
    }
  });
  return arraySums(from, rest);
}

function arraySums(from: number, rest: Float64Array): Sums {
  return {
    from,
    to: from + rest.length - 1,
    at: (units) => rest[units - from] ?? Number.POSITIVE_INFINITY,
    each: (visit) => {
      for (let i = 0; i < rest.length; i++) {
        const cost = rest[i] ?? Number.POSITIVE_INFINITY;
        if (cost < Number.POSITIVE_INFINITY) visit(from + i, cost);
      }
    },
  };
}

function inMap(next: Sums, choices: readonly Choice[], { gap, low, high }: StageBounds, work: Work): Sums {
  const rest = new Map<number, number>();
  let [from, to] = [high, low];
  next.each((sum, after) => {
    work.left -= choices.length * MAP_COST;
    if (work.left < 0) return;
    for (const { units, above } of choices) {
      const at = sum + units;
      const cost = after + above;
      if (cost > gap || at < low || at > high || cost >= (rest.get(at) ?? Number.POSITIVE_INFINITY)) continue;
      rest.set(at, cost);
      [from, to] = [Math.min(from, at), Math.max(to, at)];
    }
  });
  return {
    from,
    to,
    at: (units) => rest.get(units) ?? Number.POSITIVE_INFINITY,
    each: (visit) => {
      for (const [units, cost] of rest) visit(units, cost);
    },
  };
}
