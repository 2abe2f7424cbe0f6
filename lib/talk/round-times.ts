/**
 * Times as people say them: "about forty five", never "forty seven". Steps are common practice, no source.
 *
 *   seconds   up to 10 s each second, since people count those; up to a minute 5 s; up to two minutes a quarter of a minute;
 *             then half a minute
 *   minutes   below three minutes half a minute, then whole minutes; at least half a minute while any time is left
 *
 * "About" is said where the round number is off by a second or more (ten seconds for minutes), unless the words before it
 * leave no room for it.
 */
import { numberWords } from "./number-words.ts";

interface RoundAmount {
  /** Seconds, or minutes in halves. */
  readonly amount: number;
  readonly isAbout: boolean;
}

/** The largest time, in seconds, that is said in steps of so many seconds. */
const SECOND_STEPS: readonly (readonly [number, number])[] = [
  [10, 1],
  [60, 5],
  [120, 15],
  [Number.POSITIVE_INFINITY, 30],
];
const HALVES_BELOW = 180;
const MINUTES_OFF = 10;

/** Seconds left as said in seconds. */
export function roundSeconds(left: number): RoundAmount {
  const whole = Math.max(0, Math.round(left));
  const step = SECOND_STEPS.find(([most]) => whole <= most)?.[1] ?? 1;
  const amount = Math.round(whole / step) * step;
  return { amount, isAbout: amount !== whole };
}

/** Seconds left as said in minutes. */
export function roundMinutes(left: number): RoundAmount {
  const whole = Math.max(0, Math.round(left));
  const step = whole < HALVES_BELOW ? 30 : 60;
  const least = whole > 0 ? 30 : 0;
  const seconds = Math.max(least, Math.round(whole / step) * step);
  return { amount: seconds / 60, isAbout: Math.abs(seconds - whole) >= MINUTES_OFF };
}

/** "About about forty five", "the last about ten". */
const NO_ROOM =
  /\b(?:about|around|roughly|nearly|almost|under|over|than|just|last|final|the|these|those|another|next|your|our) $/i;

/** `before`: the words before the amount. */
export function amountWords({ amount, isAbout }: RoundAmount, before = ""): string {
  return isAbout && !NO_ROOM.test(before) ? `about ${inWords(amount)}` : inWords(amount);
}

function inWords(amount: number): string {
  const whole = Math.floor(amount);
  if (whole === amount) return numberWords(whole);
  return whole === 0 ? "half a" : `${numberWords(whole)} and a half`;
}
