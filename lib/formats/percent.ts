/** Shares as percentages, written one way wherever they stand: "78%", no space before the sign. */
import { NOISE, tenth } from "#lib/numbers/round.ts";

/**
 * A share (1 is the whole) in whole hundredths, the nearest, so that 77.9 % reads 78 everywhere. Only the whole itself reads 100:
 * what is short of it at most 99, what is over it at least 101.
 */
export function wholePercent(share: number): number {
  const nearest = Math.round(share * 100 + NOISE);
  if (nearest !== 100 || Math.abs(share - 1) < NOISE) return nearest;
  return share < 1 ? 99 : 101;
}

/** "23%" */
export const percent = (share: number): string => `${wholePercent(share)}%`;

const MOST_DECIMALS = 3;

/**
 * Shares that are read against each other: whole ones, with as many decimals (at most three) as tell apart those that differ.
 * "24.6%" beside "25%".
 */
export function percentsApart(shares: readonly number[]): string[] {
  const differ = new Set(shares.map((share) => Math.round(share / NOISE))).size;
  for (let decimals = 0; decimals < MOST_DECIMALS; decimals++) {
    const words = shares.map((share) => (decimals === 0 ? percent(share) : withDecimals(share, decimals)));
    if (new Set(words).size === differ) return words;
  }
  return shares.map((share) => withDecimals(share, MOST_DECIMALS));
}

const withDecimals = (share: number, decimals: number): string => `${Number((share * 100).toFixed(decimals))}%`;

/** "24.6% of 25%" */
export function percentOf(share: number, wanted: number): string {
  const [is, of] = percentsApart([share, wanted]);
  return `${is} of ${of}`;
}

/** A change by a share: "+23%", "−8%", "±0%". */
export function signedPercent(share: number): string {
  const whole = percent(Math.abs(share));
  return `${whole === "0%" ? "±" : share < 0 ? "−" : "+"}${whole}`;
}

/** To the tenth, for numbers that are compared with each other: "23.4%". */
export const tenthPercent = (share: number): string => `${tenth(share * 100)}%`;

/** A group's share of all work: "23.4%"; "under 1%" rather than none where there is a little. */
export const groupShare = (share: number): string => (share > 0 && share < 0.01 ? "under 1%" : tenthPercent(share));

/** "36 to 40%" */
export const percentRange = (low: number, high: number): string => `${wholePercent(low)} to ${percent(high)}`;
