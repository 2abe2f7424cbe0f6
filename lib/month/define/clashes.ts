/** Classes that overlap. */
import { minutesBetween } from "../instants.ts";
import type { MonthClass } from "../sums-types.ts";

/** Every two that overlap by more than no time ([start, end)), with the minutes; `classes` by start, then id. */
export function overlaps(id: string, classes: readonly MonthClass[]) {
  return classes.flatMap((one, i) => {
    const found = [];
    for (const other of classes.slice(i + 1)) {
      if (other.from >= one.to) break;
      found.push({
        ...pairOf(id, one, other),
        values: { minutes: minutesBetween(other.from, Math.min(one.to, other.to)) },
      });
    }
    return found;
  });
}

/** What a finding about two classes is about: `ID:A+B`. */
export const pairOf = (id: string, a: MonthClass, b: MonthClass) => ({
  about: `${id}:${a.id}+${b.id}`,
  classes: [a, b] as const,
});
