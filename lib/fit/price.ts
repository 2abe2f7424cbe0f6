/**
 * The price of a second: with a price for each second given out, every variable can choose for itself, and what a choice
 * costs above the cheapest is never negative (Lagrange multipliers; Everett, Operations Research 11, 1963). At a good price
 * the best answer is so close to the cheapest choices that nearly all times can be ruled out.
 */
import { cutOff, type Variable, valuesWithin } from "./values.ts";

/** A variable at one price: cost minus price = weight x (seconds - best)^2 + penalty + a constant. */
interface Priced {
  readonly weight: number;
  readonly best: number;
  /** The least of that expression. */
  readonly least: number;
  /** The seconds at that least value, the shorter of equals. */
  readonly at: number;
}

export interface PricedTime {
  readonly seconds: number;
  /** What it costs above the variable's cheapest choice at this price; never below 0. */
  readonly above: number;
}

const ROUNDS = 24;

function priced(v: Variable, price: number): Priced {
  const count = v.spots.length;
  const weight = v.spots.reduce((sum, { wish }) => sum + 1 / wish, 0);
  const best = (count * (1 + price / 2)) / weight;
  const near = Math.min(Math.max(best, v.low), v.high);
  const reach = Math.sqrt((2 * count) / weight) + 2 * Math.max(v.grid, v.rep ?? 0) + 1;
  let [least, at] = [Number.POSITIVE_INFINITY, near];
  // When `best` is beyond a bound, times further inside only cost more: `reach` goes past every penalty.
  for (const seconds of valuesWithin(v, near - reach, near + reach)) {
    const cost = weight * (seconds - best) ** 2 + cutOff(v, seconds);
    if (cost < least) [least, at] = [cost, seconds];
  }
  return { weight, best, least, at };
}

/** All choices that cost at most `gap` more than the cheapest, by seconds. */
export function choicesWithin(v: Variable, price: number, gap: number): PricedTime[] {
  const { weight, best, least } = priced(v, price);
  const reach = Math.sqrt((gap + least) / weight) + 1e-6;
  const choices: PricedTime[] = [];
  for (const seconds of valuesWithin(v, best - reach, best + reach)) {
    const above = weight * (seconds - best) ** 2 + cutOff(v, seconds) - least;
    if (above <= gap) choices.push({ seconds, above: Math.max(0, above) });
  }
  return choices;
}

/** The most that any choice costs above the cheapest. */
export function mostAbove(v: Variable, price: number): number {
  const { weight, best } = priced(v, price);
  return weight * Math.max((v.low - best) ** 2, (v.high - best) ** 2) + 2 * v.spots.length;
}

/** The price at which the cheapest choices add up to about a sum between `from` and `to`. */
export function priceFor(variables: readonly Variable[], from: number, to: number): number {
  const sumAt = (price: number): number => variables.reduce((sum, v) => sum + priced(v, price).at * v.spots.length, 0);
  const free = sumAt(0);
  if (free >= from && free <= to) return 0;
  const most = variables.reduce((top, v) => Math.max(top, ...v.spots.map((s) => (2 * v.high) / s.wish)), 2);
  let [low, high] = free < from ? [0, most] : [-2, 0];
  const wanted = free < from ? from : to;
  for (let round = 0; round < ROUNDS; round++) {
    const middle = (low + high) / 2;
    const sum = sumAt(middle);
    if (sum === wanted) return middle;
    if (sum < wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
