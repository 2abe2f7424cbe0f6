/** The unit of a fit's sums: one of which all sums are whole multiples, counted from the least. */
import { type Variable, valuesWithin } from "./values.ts";

/** Units are counted in millionths of a second, the finest that a time is kept in. */
const TICKS = 1_000_000;

export interface Lattice {
  /** Seconds of one unit. */
  readonly unit: number;
  /** Seconds of the least sum. */
  readonly least: number;
  readonly greatest: number;
}

/** In units above the least sum; `least` and `unit` in seconds. */
export interface SumRange {
  readonly least: number;
  readonly unit: number;
  readonly first: number;
  readonly last: number;
}

/** Null when a variable has no time at all. */
export function latticeOf(variables: readonly Variable[]): Lattice | null {
  let [unit, least, greatest] = [0, 0, 0];
  for (const v of variables) {
    const ends = endsOf(v);
    if (!ends) return null;
    least += ends[0] * v.spots.length;
    greatest += ends[1] * v.spots.length;
    if (ends[0] < ends[1]) unit = gcd(unit, Math.round(stepOf(v) * v.spots.length * TICKS));
  }
  return { unit: (unit || TICKS) / TICKS, least, greatest };
}

/** The shortest and the longest time of a variable; null when it has none. */
export function endsOf(v: Variable): readonly [number, number] | null {
  const span = Math.max(v.grid, v.rep ?? 0) + 1;
  const first = valuesWithin(v, v.low, v.low + span)[0];
  const last = valuesWithin(v, v.high - span, v.high).at(-1);
  return first === undefined || last === undefined ? null : [first, last];
}

/** Seconds of which every difference between two of its times is a multiple: repetitions of a fraction end on any second. */
function stepOf({ grid, rep }: Variable): number {
  if (rep === null) return grid;
  return gcd(Math.round(grid * TICKS), (Number.isInteger(rep) ? rep : 1) * TICKS) / TICKS;
}

function gcd(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y > 0) [x, y] = [y, x % y];
  return x;
}
