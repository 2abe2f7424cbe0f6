/** The instants of a month's slots, and their order in time. */
import { dateOfDay, dayNumber, minuteOfDay, weekText } from "#lib/calendar/days.ts";
import { type WallClock, zoneClock } from "#lib/calendar/zone.ts";
import type { TimedSlot } from "./sums-types.ts";
import type { MonthFile, MonthSlot } from "./types.ts";

const MINUTE_MS = 60_000;
const DAY_MINUTES = 1440;

/** The wall clock of the studio over the whole month. */
export function clockOfMonth({ zone, dates }: Pick<MonthFile, "zone" | "dates">): WallClock {
  const [first, last] = [dayNumber(dates.known ?? dates.from), dayNumber(dates.to)];
  return zoneClock(zone, first * DAY_MINUTES * MINUTE_MS, (last + 1) * DAY_MINUTES * MINUTE_MS);
}

/** `to` is `minutes` of elapsed time later, also across a change of the clock. */
export function timeSlot(slot: MonthSlot, clock: WallClock): TimedSlot {
  const wall = (dayNumber(slot.date) * DAY_MINUTES + minuteOfDay(slot.start)) * MINUTE_MS;
  const { at, kind } = clock.momentOf(wall);
  const to = at + slot.minutes * MINUTE_MS;
  return { slot, from: at, to, kind, till: timeText(clock.wallTimeAt(to)) };
}

function timeText(wall: number): string {
  const minutes = Math.floor(wall / MINUTE_MS) % DAY_MINUTES;
  return `${String(Math.floor(minutes / 60)).padStart(2, "0")}:${String(minutes % 60).padStart(2, "0")}`;
}

/** By start, then id by code unit. */
export function byStart(a: TimedSlot, b: TimedSlot): number {
  return a.from - b.from || (a.slot.id < b.slot.id ? -1 : a.slot.id > b.slot.id ? 1 : 0);
}

/** "2026-03-04T18:00:00Z". */
export const instantText = (at: number): string => `${new Date(at).toISOString().slice(0, 19)}Z`;

export const minutesBetween = (from: number, to: number): number => (to - from) / MINUTE_MS;

/** One ISO week of the month. */
export interface MonthWeek {
  /** "2026-W10". */
  readonly week: string;
  /** All its seven days are in known..to. */
  readonly whole: boolean;
  /** Dates of its Monday and Sunday. */
  readonly from: string;
  readonly to: string;
}

/** Every week from the one of `known` to the one of `to`. */
export function weeksOf({ dates }: Pick<MonthFile, "dates">): MonthWeek[] {
  const known = dayNumber(dates.known ?? dates.from);
  const last = dayNumber(dates.to);
  const weeks: MonthWeek[] = [];
  for (let monday = known - mondayOffset(known); monday <= last; monday += 7) {
    const from = dateOfDay(monday);
    const whole = monday >= known && monday + 6 <= last;
    weeks.push({ week: weekText(from), whole, from, to: dateOfDay(monday + 6) });
  }
  return weeks;
}

/** 1970-01-01 was a Thursday. */
const mondayOffset = (day: number): number => (((day + 3) % 7) + 7) % 7;
