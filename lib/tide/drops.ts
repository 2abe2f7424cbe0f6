/** Work and rest down the columns: a drop for each class and group, and the hours by which a rest was cut short. */

import type { MonthSums, TimedSlot } from "#lib/month/sums-types.ts";
import type { MonthFile, MonthFinding } from "#lib/month/types.ts";
import { limitsOfMonth } from "#lib/month/types.ts";
import { own } from "#lib/plan/lookup.ts";
import { GROUPS, type Group } from "#lib/plan/schema.ts";
import { regionOf } from "./columns.ts";
import { type HourScale, yOfInstant } from "./hours.ts";
import { recoveryHoursOf } from "./limits.ts";
import type { TideCollision, TideColumn, TideDrop } from "./types.ts";

const HOUR_MS = 3_600_000;
/** Of a column's width, the widest drop and the narrowest that is still seen. */
const WIDEST = 0.75;
const NARROWEST_PX = 4;
/** A class with less than this share of the limit does not make its day heavy. */
const SETS_THE_CLOCK = 0.1;

export interface DropsOf {
  readonly month: MonthFile;
  readonly sums: MonthSums;
  readonly regulars: string;
  readonly columns: readonly TideColumn[];
  readonly groupWidth: number;
  readonly scale: HourScale;
}

/** In order of time, so that a later one is drawn over an earlier one. */
export function dropsOf(of: DropsOf): TideDrop[] {
  const { month, columns } = of;
  const classes = classesOf(of);
  const most = Math.max(1, ...classes.flatMap(({ work }) => Object.values(work)));
  const limits = limitsOfMonth(month);
  const heavyDays = new Map(own(of.sums.regulars, of.regulars)?.days.map((day) => [day.date, day.heavy]));
  const last = of.scale.tops.at(-1) ?? 0;
  const yOf = keptY(of.scale);
  return classes.flatMap(({ timed, work }) =>
    columns.flatMap(({ group, x }): TideDrop[] => {
      const seconds = work[group] ?? 0;
      if (seconds <= 0) return [];
      const least = limits.heavyBy[group] ?? limits.heavySeconds;
      const heavy = (heavyDays.get(timed.slot.date) ?? []).includes(group) && seconds >= SETS_THE_CLOCK * least;
      const top = yOf(timed.from);
      const end = yOf(timed.to + recoveryHoursOf(month, group) * HOUR_MS);
      if (end <= 0 || top >= last || timed.slot.date > month.dates.to) return [];
      const width = Math.max(NARROWEST_PX, (seconds / most) * WIDEST * of.groupWidth);
      return [{ slot: timed.slot.id, group, region: regionOf(group), heavy, x, width, top, end, work: seconds }];
    }),
  );
}

/** Each instant is looked up once: a zone's clock is slow to ask, and sixteen groups ask of the same hours. */
function keptY(scale: HourScale): (at: number) => number {
  const known = new Map<number, number>();
  return (at) => {
    const y = known.get(at) ?? yOfInstant(scale, at);
    known.set(at, y);
    return y;
  };
}

type Work = Partial<Record<Group, number>>;

/** Classes of the chosen regulars that have a known plan. */
function classesOf({ month, sums, regulars }: DropsOf): { timed: TimedSlot; work: Work }[] {
  return sums.slots.flatMap((timed) => {
    const { slot } = timed;
    const plan = slot.plan == null ? undefined : own(month.plans, slot.plan);
    const counts = slot.out !== true && slot.regulars?.includes(regulars) && plan && plan.known !== false;
    return counts ? [{ timed, work: plan.groups }] : [];
  });
}

/** Hatched from the second class to the end of the first one's rest. */
export function collisionsOf(of: DropsOf, findings: readonly MonthFinding[]): TideCollision[] {
  const at = new Map(of.sums.slots.map((timed) => [timed.slot.id, timed]));
  return findings.flatMap(({ id, rule, slots }): TideCollision[] => {
    const [, regulars, group] = id.split(":");
    const column = of.columns.find((one) => one.group === group);
    const [first, second] = [at.get(slots[0] ?? ""), at.get(slots[1] ?? "")];
    if (rule !== "short-recovery" || regulars !== of.regulars || !column || !first || !second) return [];
    const rested = first.to + recoveryHoursOf(of.month, column.group) * HOUR_MS;
    return [
      {
        finding: id,
        group: column.group,
        x: column.x,
        width: WIDEST * of.groupWidth,
        top: yOfInstant(of.scale, second.from),
        end: yOfInstant(of.scale, rested),
        hours: shownHours((second.from - first.to) / HOUR_MS, recoveryHoursOf(of.month, column.group)),
      },
    ];
  });
}

/** Whole hours, and never as many as would have been enough. */
const shownHours = (hours: number, enough: number): number => Math.min(Math.round(hours), Math.ceil(enough) - 1);

/** Seconds x weight that the chosen regulars do by group, over the month. */
export function workByGroup(sums: MonthSums, regulars: string): Map<Group, number> {
  const days = own(sums.regulars, regulars)?.days ?? [];
  return new Map(GROUPS.map((group) => [group, days.reduce((sum, day) => sum + (day.groups[group] ?? 0), 0)]));
}
