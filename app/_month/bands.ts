/** The parts of a day that a week's rows are made of: classes at like times stand beside each other. Pure. */
import { minuteOfDay } from "#lib/programme/calendar.ts";
import type { Slot } from "#lib/programme/layout.ts";

export const BANDS = ["morning", "midday", "evening"] as const;
export type Band = (typeof BANDS)[number];

const NOON_BEGINS = 11 * 60 + 30;
const EVENING_BEGINS = 16 * 60;

export function bandOf(time: string): Band {
  const minute = minuteOfDay(time);
  if (minute < NOON_BEGINS) return "morning";
  return minute < EVENING_BEGINS ? "midday" : "evening";
}

/** A week's slots by day and part of day; `bands` are those that have any, in order (all three are never needed). */
export function weekBands(
  dates: readonly string[],
  slots: readonly Slot[],
): { bands: Band[]; of: Map<string, Slot[]> } {
  const of = new Map<string, Slot[]>();
  for (const slot of slots) {
    if (!dates.includes(slot.date)) continue;
    const key = cellKey(slot.date, bandOf(slot.time));
    of.set(key, [...(of.get(key) ?? []), slot]);
  }
  return { bands: BANDS.filter((band) => dates.some((date) => of.has(cellKey(date, band)))), of };
}

export const cellKey = (date: string, band: Band): string => `${date} ${band}`;
