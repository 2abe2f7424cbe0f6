/** The unit of a fit's sums: the largest of which all sums are whole multiples. */
import { type Variable, valuesWithin } from "./values.ts";

/** Seconds a grid may be finer than a second by: 0.1 s steps are the finest the format's clock knows. */
const TICKS = 1_000_000;
/** Most times looked at for one variable; further ones bring no finer unit that matters. */
const ENOUGH = 120;

export interface Lattice {
  /** Seconds of one unit. */
  readonly unit: number;
  /** Seconds of the least sum. */
  readonly least: number;
  readonly greatest: number;
}

/** Null when a variable has no time at all. */
export function latticeOf(variables: readonly Variable[]): Lattice | null {
  let [unit, least, greatest] = [0, 0, 0];
  for (const v of variables) {
    const span = Math.max(v.grid, v.rep ?? 0) + 1;
    const first = valuesWithin(v, v.low, v.low + span)[0];
    const last = valuesWithin(v, v.high - span, v.high).at(-1);
    if (first === undefined || last === undefined) return null;
    least += first * v.spots.length;
    greatest += last * v.spots.length;
    for (const value of valuesWithin(v, first, first + span * ENOUGH))
      unit = gcd(unit, Math.round((value - first) * v.spots.length * TICKS));
  }
  return { unit: (unit || TICKS) / TICKS, least, greatest };
}

function gcd(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y > 0) [x, y] = [y, x % y];
  return x;
}
