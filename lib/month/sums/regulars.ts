/** What the classes of one group of regulars add up to, by day, by week and from class to class. */
import { GROUPS, type Group } from "#lib/plan/schema.ts";
import type { MonthWeek } from "../instants.ts";
import type { MonthClass, NeighbourClasses, RegularsDay, RegularsSums, RegularsWeek } from "../sums-types.ts";
import { planLikeness } from "./likeness.ts";
import { planWork } from "./plan-work.ts";
import { type HeavyLimits, isHeavy, recoveries } from "./recovery.ts";
import { varietyOf } from "./variety.ts";

/** What the sums depend on besides the classes. */
export interface SumsFrame {
  /** Dates, both inclusive; totals count these only. */
  readonly from: string;
  readonly to: string;
  readonly weeks: readonly MonthWeek[];
  readonly limits: HeavyLimits;
}

/** `classes`: all of known..to, by start, then id. */
export function regularsSums(classes: readonly MonthClass[], frame: SumsFrame): RegularsSums {
  const days = [...byDate(classes)].map(([date, ofDay]) => ({ day: dayOf(date, ofDay, frame.limits), classes: ofDay }));
  return {
    days: days.map(({ day }) => day),
    recovery: recoveries(
      days.map(({ day: { date, heavy }, classes: ofDay }) => ({ date, heavy, classes: ofDay })),
      frame.limits,
    ),
    neighbours: neighboursOf(classes),
    weeks: weekSums(
      days.map(({ day }) => day),
      classes,
      frame.weeks,
    ),
    variety: varietyOf(classes.filter(({ date }) => date >= frame.from && date <= frame.to)),
  };
}

/** Dates in order; the classes of each by start, then id. */
export function byDate(classes: readonly MonthClass[]): Map<string, MonthClass[]> {
  const days = new Map<string, MonthClass[]>();
  for (const one of classes) {
    const day = days.get(one.date);
    if (day) day.push(one);
    else days.set(one.date, [one]);
  }
  return new Map([...days].sort(([a], [b]) => (a < b ? -1 : 1)));
}

function dayOf(date: string, classes: readonly MonthClass[], limits: HeavyLimits): RegularsDay {
  const sums = GROUPS.map(() => 0);
  let [push, pull, metMinutes] = [0, 0, 0];
  for (const { plan } of classes) {
    if (!plan) continue;
    push += plan.push;
    pull += plan.pull;
    metMinutes += plan.metMinutes;
    const { byGroup } = planWork(plan);
    for (let i = 0; i < sums.length; i++) sums[i] = (sums[i] ?? 0) + (byGroup[i] ?? 0);
  }
  const groups: Partial<Record<Group, number>> = {};
  const heavy: Group[] = [];
  for (const [i, group] of GROUPS.entries()) {
    const seconds = sums[i] ?? 0;
    if (seconds > 0) groups[group] = seconds;
    if (isHeavy(limits, group, seconds)) heavy.push(group);
  }
  return { date, groups, push, pull, metMinutes, heavy };
}

function neighboursOf(classes: readonly MonthClass[]): NeighbourClasses[] {
  return classes.slice(1).map((next, i) => {
    const last = classes[i] as MonthClass;
    const alike = last.plan && next.plan ? planLikeness(last.plan, next.plan) : null;
    return { slots: [last.id, next.id], likeness: alike };
  });
}

function weekSums(days: readonly RegularsDay[], classes: readonly MonthClass[], weeks: readonly MonthWeek[]) {
  const found: RegularsWeek[] = [];
  for (const { week, whole, from, to } of weeks) {
    const isIn = ({ date }: { readonly date: string }): boolean => date >= from && date <= to;
    const ofWeek = days.filter(isIn);
    const seconds = sumOf(ofWeek, ({ groups }) => sumOf(Object.values(groups), (s) => s));
    const metMinutes = sumOf(ofWeek, (day) => day.metMinutes);
    const last = found.at(-1);
    const change = whole && last?.whole && last.seconds > 0 ? (seconds - last.seconds) / last.seconds : null;
    found.push({ week, whole, seconds, metMinutes, change, ...varietyOf(classes.filter(isIn)) });
  }
  return found;
}

const sumOf = <T>(list: readonly T[], of: (one: T) => number): number => list.reduce((sum, one) => sum + of(one), 0);
