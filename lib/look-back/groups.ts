/** What each group of muscles was to do and did over many classes, in all and by group of regulars. */
import { GROUPS, type Group } from "#lib/plan/schema.ts";
import { bestEnd } from "./sums.ts";
import { addGroups, type GroupSeconds, type TaughtEnd } from "./taught.ts";

/** A class by its log. */
export interface GroupWork {
  /** Seconds x weight, as its plan says and as it was taught. */
  readonly planned: GroupSeconds;
  readonly taught: GroupSeconds;
  readonly regulars: readonly string[];
}

export interface GroupSum {
  readonly group: Group;
  readonly planned: number;
  readonly taught: number;
}

/** Every group with something planned or taught, in the order of `GROUPS`. */
export function groupSums(classes: readonly GroupWork[]): GroupSum[] {
  const planned = classes.map((one) => one.planned).reduce(addGroups, {});
  const taught = classes.map((one) => one.taught).reduce(addGroups, {});
  return GROUPS.map((group) => ({ group, planned: planned[group] ?? 0, taught: taught[group] ?? 0 })).filter(
    (sum) => sum.planned > 0 || sum.taught > 0,
  );
}

/** By the id of the regulars; "" for classes that have none. A class that two come to counts for both. */
export function groupSumsByRegulars(classes: readonly GroupWork[]): Map<string, GroupSum[]> {
  const by = new Map<string, GroupWork[]>();
  for (const one of classes) {
    for (const id of one.regulars.length > 0 ? new Set(one.regulars) : [""]) by.set(id, [...(by.get(id) ?? []), one]);
  }
  return new Map([...by].map(([id, own]) => [id, groupSums(own)]));
}

/**
 * Of several logs of one class the best, the first of equals, as the class is counted everywhere; logs of no class all. Else a class
 * that was begun twice would have been planned twice.
 */
export function oneLogAClass<T extends { readonly end: TaughtEnd }>(
  logs: readonly T[],
  classOf: (log: T) => string | null,
): T[] {
  const by = new Map<string, T[]>();
  for (const log of logs) {
    const key = classOf(log);
    if (key !== null) by.set(key, [...(by.get(key) ?? []), log]);
  }
  return logs.filter((log) => {
    const own = by.get(classOf(log) ?? "") ?? [log];
    const best = bestEnd(own.map(({ end }) => end));
    return own.find(({ end }) => end === best) === log;
  });
}
