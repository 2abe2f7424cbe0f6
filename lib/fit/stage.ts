/** What the search over sums and the settling of ties both look at. */
import type { PricedTime } from "./price.ts";

/**
 * Costs nearer than this count as equal. Each is a sum of at most some thousands of double operations on numbers below
 * 1e6, right to about 1e-9 at worst and 1e-12 as classes are; two costs that truly differ by less are a tie to anybody.
 */
export const EQUAL = 1e-9;

/** What the variables from one on can still cost, by the units they give out above their least. */
export interface Stage {
  readonly choices: readonly (PricedTime & { readonly units: number })[];
  /** Units of the first entry of `rest`. */
  readonly from: number;
  /** Least cost above the cheapest choices of this variable and all after it; Infinity for what cannot be. */
  readonly rest: Float64Array;
}
