/** Shared by the search over sums and the settling of ties. */
import type { PricedTime } from "./price.ts";

/**
 * Costs nearer than this count as equal. Each is a sum of at most some thousands of double operations on numbers below
 * 1e6, exact to about 1e-9 at worst and 1e-12 in real classes. A smaller real difference counts as a tie.
 */
export const EQUAL = 1e-9;

/** The least cost of one variable and all later ones, by the units they give out above their least. */
export interface Stage {
  readonly choices: readonly (PricedTime & { readonly units: number })[];
  /** Units of the first entry of `rest`. */
  readonly from: number;
  /** The least cost above the cheapest choices of this variable and all later ones; Infinity where impossible. */
  readonly rest: Float64Array;
}
