/** The time of a class against the length of its slot, worded the same wherever both are shown. */
import { tenth } from "#lib/numbers/round.ts";
import { clockTime, secondsWords } from "#lib/plan/format.ts";

/**
 * Free seconds; below 0 where the class is over. The difference of the two times as shown, in whole seconds, so that it
 * agrees with what a reader subtracts. Tenths only where both times look the same.
 */
export function freeSeconds(total: number, length: number): number {
  const shown = Math.round(length) - Math.round(total);
  return shown === 0 ? tenth(length - total) + 0 : shown;
}

/** "to the second", "14 s free", "2 min 10 s over". */
export function freeWords(total: number, length: number): string {
  const left = freeSeconds(total, length);
  if (left === 0) return "to the second";
  return left > 0 ? `${secondsWords(left)} free` : `${secondsWords(-left)} over`;
}

/** "24:46 of 25:00". */
export const ofLength = (total: number, length: number): string => `${clockTime(total)} of ${clockTime(length)}`;

/** "of 25:00 · 14 s free", for under the time of the class. */
export const againstLength = (total: number, length: number): string =>
  `of ${clockTime(length)} · ${freeWords(total, length)}`;

/** How much another order or other times change the class: "27 s less", "5 s more", "the same". */
export function changeWords(before: number, after: number): string {
  const less = freeSeconds(after, before);
  if (less === 0) return "the same";
  return less > 0 ? `${secondsWords(less)} less` : `${secondsWords(-less)} more`;
}
