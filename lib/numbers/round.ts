/** Rounding of what is shown and stored, and removal of floating-point noise. */

/** To the tenth: clock, talk and loads are kept and shown so. */
export const tenth = (x: number): number => Math.round(x * 10) / 10;

export const hundredth = (x: number): number => Math.round(x * 100) / 100;

/** To six decimals: times and costs of a fit. */
export const millionth = (x: number): number => Math.round(x * 1e6) / 1e6;

/** To nine decimals and never -0: removes floating-point noise from sums. */
export const withoutNoise = (x: number): number => Math.round(x * 1e9) / 1e9 + 0;

/** To so many decimals, half away from zero and never -0; a half that noise has made a little less still counts as one. */
export function halfAway(x: number, decimals: number): number {
  const scale = 10 ** decimals;
  return (Math.sign(x) * Math.floor(Math.abs(x) * scale + 0.5 + NOISE)) / scale + 0;
}

/** Numbers nearer than this count as equal, where both sides were summed in different orders. */
export const NOISE = 1e-9;

/** Moments of a class nearer than this (seconds) count as the same, since device clocks count whole milliseconds. */
export const SAME_MOMENT = 1e-6;
