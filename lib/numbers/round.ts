/** Rounding: for what is shown and stored, and against the noise of binary fractions. */

/** The clock, talk and loads are kept and shown to the tenth. */
export const tenth = (x: number): number => Math.round(x * 10) / 10;

export const hundredth = (x: number): number => Math.round(x * 100) / 100;

/** A time or a cost of a fit: to six decimals. */
export const millionth = (x: number): number => Math.round(x * 1e6) / 1e6;

/** Sums of decimal fractions without the noise that doubles leave: to nine decimals, and never -0. */
export const withoutNoise = (x: number): number => Math.round(x * 1e9) / 1e9 + 0;

/** Two numbers nearer than this are the same: for comparisons whose sides were summed in different orders. */
export const NOISE = 1e-9;

/** Two moments of a class nearer than this are the same. Seconds: device clocks count in whole milliseconds. */
export const SAME_MOMENT = 1e-6;
