/** What one coach teaches. */
import { minutesBetween } from "../instants.ts";
import type { CoachDay, CoachSums, MonthClass } from "../sums-types.ts";
import { byDate, type SumsFrame } from "./regulars.ts";

/** `classes`: all of known..to, by start, then id. The totals count from..to. */
export function coachSums(classes: readonly MonthClass[], { from, to }: Pick<SumsFrame, "from" | "to">): CoachSums {
  const days = [...byDate(classes)].map(([date, ofDay]) => coachDay(date, ofDay));
  const counted = days.filter(({ date }) => date >= from && date <= to);
  return {
    days,
    minutes: counted.reduce((sum, day) => sum + day.minutes, 0),
    talkSeconds: counted.reduce((sum, day) => sum + day.talkSeconds, 0),
  };
}

function coachDay(date: string, classes: readonly MonthClass[]): CoachDay {
  return {
    date,
    classes: classes.length,
    minutes: classes.reduce((sum, { slot }) => sum + slot.minutes, 0),
    talkSeconds: classes.reduce((sum, { plan }) => sum + (plan?.talkSeconds ?? 0), 0),
    from: Math.min(...classes.map((one) => one.from)),
    to: Math.max(...classes.map((one) => one.to)),
    gaps: classes.slice(1).map((next, i) => minutesBetween(classes[i]?.to ?? next.from, next.from)),
  };
}
