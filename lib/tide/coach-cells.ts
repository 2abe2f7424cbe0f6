/** Minutes that each coach teaches on a day, with the day's own little rail under them. */
import { minuteOfDay } from "#lib/calendar/days.ts";
import type { MonthSums } from "#lib/month/sums-types.ts";
import { limitsOfMonth, type MonthFile, type MonthSlot } from "#lib/month/types.ts";
import { plural } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import { firstName } from "./day-marks.ts";
import type { CoachCell, TideCoach } from "./types.ts";

/** The little rail's ends, in minutes of the day. */
const RAIL = { from: 6 * 60, to: 22 * 60 };

const onRail = (minute: number): number => Math.min(1, Math.max(0, (minute - RAIL.from) / (RAIL.to - RAIL.from)));

/** Those of the month that teach in it, then the others, each by name. */
export function coachesOf(month: MonthFile, sums: MonthSums): TideCoach[] {
  const all = Object.entries(month.coaches).map(([id, { name }]) => {
    const minutes = own(sums.coaches, id)?.minutes ?? 0;
    return { id, name: firstName(name), minutes, total: totalWords(minutes) };
  });
  return all
    .sort((a, b) => b.minutes - a.minutes || (a.id < b.id ? -1 : 1))
    .map(({ id, name, total }) => ({ id, name, total }));
}

function totalWords(minutes: number): string {
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  if (minutes === 0) return "";
  return hours === 0 ? `${rest} min` : rest === 0 ? `${hours} h` : `${hours} h ${rest}`;
}

export interface CoachDayOf {
  readonly month: MonthFile;
  readonly sums: MonthSums;
  /** On that day, on. */
  readonly slots: readonly MonthSlot[];
  readonly date: string;
}

/** One coach on one day; undefined where nothing is taught. */
export function coachCell(of: CoachDayOf, coach: string): CoachCell | undefined {
  const day = own(of.sums.coaches, coach)?.days.find(({ date }) => date === of.date);
  if (!day || day.classes === 0) return undefined;
  const bars = of.slots
    .filter((slot) => slot.coach === coach)
    .map(({ start, minutes }) => ({ from: onRail(minuteOfDay(start)), to: onRail(minuteOfDay(start) + minutes) }));
  const double = day.gaps.some((gap) => gap < 0);
  const tight = day.gaps.some((gap) => gap >= 0 && gap < limitsOfMonth(of.month).gapMinutes);
  const gaps = day.gaps.map((gap) => (gap < 0 ? "two classes at once" : `${gap} min between`));
  const words = [`${day.minutes} min`, ...(day.classes > 1 ? [plural(day.classes, "class", "classes")] : []), ...gaps];
  return { coach, minutes: day.minutes, bars, double, tight, words: words.join(", ") };
}
