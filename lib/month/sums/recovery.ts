/** Heavy days of a muscle group and the time from one to the next. */
import { NOISE } from "#lib/numbers/round.ts";
import { GROUPS, type Group } from "#lib/plan/schema.ts";
import { minutesBetween } from "../instants.ts";
import type { MonthClass, Recovery } from "../sums-types.ts";
import type { MonthLimits } from "../types.ts";
import { workOf } from "./plan-work.ts";

/** A class with this share of the heavy limit counts for the rest of a group. */
const SETS_THE_CLOCK = 0.1;

export type HeavyLimits = Pick<MonthLimits, "heavySeconds" | "heavyBy">;

/** The classes of one date, by start, with the heavy groups of that date. */
export interface WorkedDay {
  readonly date: string;
  readonly classes: readonly MonthClass[];
  readonly heavy: readonly Group[];
}

/** Seconds of a group from which a day, or a class, is heavy. */
const heavyFrom = ({ heavySeconds, heavyBy }: HeavyLimits, group: Group): number => heavyBy[group] ?? heavySeconds;

export const isHeavy = (limits: HeavyLimits, group: Group, seconds: number): boolean =>
  seconds > 0 && seconds >= heavyFrom(limits, group) - NOISE;

/** By the date of the first day, then the group's name. */
export function recoveries(days: readonly WorkedDay[], limits: HeavyLimits): Recovery[] {
  const found = GROUPS.flatMap((group) => ofGroup(days, group, heavyFrom(limits, group)));
  return found.sort((a, b) => compare(a.from, b.from) || compare(a.group, b.group));
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function ofGroup(days: readonly WorkedDay[], group: Group, limit: number): Recovery[] {
  const heavy = days.filter((day) => day.heavy.includes(group));
  return heavy.slice(1).flatMap((second, i) => {
    const first = heavy[i];
    const last = first && settersOf(first, group, limit).reduce(laterEnd);
    const next = settersOf(second, group, limit)[0];
    if (!first || !last || !next) return [];
    const minutes = minutesBetween(last.to, next.from);
    return [{ group, from: first.date, to: second.date, minutes, slots: [last.id, next.id] as const }];
  });
}

/** The classes that set the clock for a group, by start, then id; of a heavy day there is at least one. */
function settersOf({ classes }: WorkedDay, group: Group, limit: number): MonthClass[] {
  const enough = classes.filter(({ plan }) => reaches(workOf(plan, group), limit * SETS_THE_CLOCK));
  return enough.length > 0 ? enough : classes.filter(({ plan }) => workOf(plan, group) > 0);
}

const reaches = (seconds: number, least: number): boolean => seconds > 0 && seconds >= least - NOISE;

/** The classes come by start, then id: of two that end together the later id counts. */
const laterEnd = (a: MonthClass, b: MonthClass): MonthClass => (b.to > a.to || (b.to === a.to && b.id > a.id) ? b : a);
