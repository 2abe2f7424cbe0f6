/**
 * When the lines of a span begin, for an order that is in time. The plan's calls, the start, the set-up and lines with a moment
 * of their own begin when they are wanted; the others are spread between them, so that the longest silence is as short as it
 * can be.
 */
import { latestBegins, type Spoken } from "./said-order.ts";
import { evenBegins } from "./spread.ts";

import type { Window } from "./windows.ts";

interface Wanted {
  /** Seconds; undefined for lines that are spread. */
  readonly wanted?: number;
}

/** Lines for one voice, and the work during which they are spread. */
export interface VoicedSpan {
  readonly wishes: readonly Wanted[];
  /** The same lines in tenths. */
  readonly lines: readonly Spoken[];
  /** Seconds; undefined when no line is said during work. */
  readonly work: Window | undefined;
}

/** Tenths, one for each line of the order. */
export function beginsOf(span: VoicedSpan, said: readonly number[]): number[] {
  const begins = packedBegins(span, said);
  const isSpread = (n: number): boolean => {
    const place = said[n];
    return place !== undefined && span.wishes[place]?.wanted === undefined;
  };
  for (let first = 0; first < said.length; first++) {
    if (!isSpread(first)) continue;
    let last = first;
    while (isSpread(last + 1)) last++;
    const even = spreadRun(span, said, { begins, first, last });
    for (const [n, begin] of even.entries()) begins[first + n] = begin;
    first = last;
  }
  return begins;
}

/** Lines that are spread as early as they can be, the others when they are wanted. */
function packedBegins({ wishes, lines }: VoicedSpan, said: readonly number[]): number[] {
  const latest = latestBegins(lines, said);
  let free = Number.NEGATIVE_INFINITY;
  return said.map((place, n) => {
    const { earliest, length } = lines[place] as Spoken;
    const wanted = Math.ceil((wishes[place]?.wanted ?? Number.NEGATIVE_INFINITY) * 10 - 1e-6);
    const begin = Math.min(latest[n] ?? 0, Math.max(free, earliest, wanted));
    free = begin + length;
    return begin;
  });
}

interface Run {
  readonly begins: readonly number[];
  /** Places in the order, both of lines that are spread. */
  readonly first: number;
  readonly last: number;
}

/** Spreads neighbours between the line before them, else the start of the work, and the line after them, else its end. */
function spreadRun({ lines, work }: VoicedSpan, said: readonly number[], { begins, first, last }: Run): number[] {
  const run = said.slice(first, last + 1).map((place) => lines[place] as Spoken);
  const lengthAt = (n: number): number => lines[said[n] ?? 0]?.length ?? 0;
  const startsAt = Math.ceil((work?.from ?? 0) * 10 - 1e-6);
  const endsAt = Math.floor((work?.to ?? 0) * 10 + 1e-6);
  const from = first > 0 ? (begins[first - 1] ?? 0) + lengthAt(first - 1) : startsAt;
  const to = Math.min(begins[last + 1] ?? endsAt, endsAt);
  const gates = run.map(({ length, earliest, latest }) => ({ length, earliest, latest: latest - length }));
  return evenBegins(gates, from, to);
}
