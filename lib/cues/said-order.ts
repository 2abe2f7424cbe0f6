/** Lines for one voice, and orders of them as lists of indices. Times are whole tenths of a second. */

export interface Spoken {
  /** Length, at least 1. */
  readonly length: number;
  /** The window: begins no earlier, ends no later. */
  readonly earliest: number;
  readonly latest: number;
  /** What is lost if it is not said: a whole number above 0. */
  readonly worth: number;
  /** Indices of lines that must come before this one if both are said. */
  readonly after: readonly number[];
}

export function spokenAt(lines: readonly Spoken[], place: number): Spoken {
  const line = lines[place];
  if (!line) throw new Error(`No line ${place}.`);
  return line;
}

/** Start of each line of an order if every line is said as early as possible. */
export function earliestBegins(lines: readonly Spoken[], order: readonly number[]): number[] {
  let free = Number.NEGATIVE_INFINITY;
  return order.map((place) => {
    const line = spokenAt(lines, place);
    const begin = Math.max(free, line.earliest);
    free = begin + line.length;
    return begin;
  });
}

/** Start of each line of an order if every line is said as late as possible. */
export function latestBegins(lines: readonly Spoken[], order: readonly number[]): number[] {
  let due = Number.POSITIVE_INFINITY;
  const begins = [...order].reverse().map((place) => {
    const line = spokenAt(lines, place);
    due = Math.min(due, line.latest) - line.length;
    return due;
  });
  return begins.reverse();
}

/** True when the order respects `after` and every line ends in time. */
export function isInTime(lines: readonly Spoken[], order: readonly number[]): boolean {
  return keepsOrder(lines, order) && lateness(lines, order) <= 0;
}

export const keepsOrder = (lines: readonly Spoken[], order: readonly number[]): boolean =>
  order.every((place, n) => spokenAt(lines, place).after.every((other) => order.indexOf(other) < n));

/** Tenths by which the latest line of an order is late; 0 or less when all are in time. */
export function lateness(lines: readonly Spoken[], order: readonly number[]): number {
  let free = Number.NEGATIVE_INFINITY;
  let worst = Number.NEGATIVE_INFINITY;
  for (const place of order) {
    const { earliest, length, latest } = spokenAt(lines, place);
    free = Math.max(free, earliest) + length;
    worst = Math.max(worst, free - latest);
  }
  return worst;
}
