/** Time between the neighbouring classes of one coach. */
import { NOISE } from "#lib/numbers/round.ts";
import { minutesBetween } from "../instants.ts";
import type { MonthClass } from "../sums-types.ts";

interface Gap {
  readonly a: MonthClass;
  readonly b: MonthClass;
  readonly minutes: number;
}

/** Neighbours by start that do not overlap and have less than `least` minutes between them. */
export function gapsBelow(classes: readonly MonthClass[], least: number): Gap[] {
  return classes.slice(1).flatMap((b, i) => {
    const a = classes[i] as MonthClass;
    const minutes = minutesBetween(a.to, b.from);
    return minutes >= 0 && minutes < least - NOISE ? [{ a, b, minutes }] : [];
  });
}
