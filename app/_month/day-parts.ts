/** The parts of a day, which are the rows of a week: classes at like times stand beside each other. Pure. */
import { minuteOfDay } from "#lib/calendar/days.ts";
import type { Slot } from "#lib/programme/layout.ts";

const DAY_PARTS = ["morning", "midday", "evening"] as const;
export type DayPart = (typeof DAY_PARTS)[number];

const NOON_BEGINS = 11 * 60 + 30;
const EVENING_BEGINS = 16 * 60;

export function dayPartOf(time: string): DayPart {
  const minute = minuteOfDay(time);
  if (minute < NOON_BEGINS) return "morning";
  return minute < EVENING_BEGINS ? "midday" : "evening";
}

/** A week's slots by day and part of day. `dayParts`: those that have a slot in this week, in order. */
export function weekByParts(
  dates: readonly string[],
  slots: readonly Slot[],
): { dayParts: DayPart[]; of: Map<string, Slot[]> } {
  const of = new Map<string, Slot[]>();
  for (const slot of slots) {
    if (!dates.includes(slot.date)) continue;
    const key = cellKey(slot.date, dayPartOf(slot.time));
    of.set(key, [...(of.get(key) ?? []), slot]);
  }
  const dayParts = DAY_PARTS.filter((part) => dates.some((date) => of.has(cellKey(date, part))));
  return { dayParts, of };
}

export const cellKey = (date: string, part: DayPart): string => `${date} ${part}`;
