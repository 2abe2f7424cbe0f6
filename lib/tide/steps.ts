/** From one place of the sheet to the next: days down, classes across. */
import { minuteOfDay } from "#lib/calendar/days.ts";
import type { TideDay } from "./types.ts";

/** A class, or a day as a whole. */
export interface TidePlace {
  readonly date: string;
  readonly slot: string | null;
}

type Days = readonly Pick<TideDay, "date" | "marks">[];

export const placeOfSlot = (days: Days, slot: string): TidePlace | undefined => {
  const day = days.find(({ marks }) => marks.some((mark) => mark.slot.id === slot));
  return day && { date: day.date, slot };
};

/** So many days on, at most to the ends; from a class to the one of that day nearest in time, where there is one. */
export function daysOn(days: Days, at: TidePlace, by: number): TidePlace {
  const from = days.findIndex(({ date }) => date === at.date);
  const to = days[Math.min(days.length - 1, Math.max(0, from + by))];
  if (!to || to.date === at.date) return at;
  if (at.slot === null) return { date: to.date, slot: null };
  const time = days[from]?.marks.find(({ slot }) => slot.id === at.slot)?.slot.start ?? "00:00";
  const far = (start: string) => Math.abs(minuteOfDay(start) - minuteOfDay(time));
  const [first, ...rest] = to.marks;
  if (!first) return { date: to.date, slot: null };
  return { date: to.date, slot: rest.reduce((a, b) => (far(b.slot.start) < far(a.slot.start) ? b : a), first).slot.id };
}

/** The class before or after on the same day; before the first stands the day itself. */
export function classesOn(days: Days, at: TidePlace, by: 1 | -1): TidePlace {
  const marks = days.find(({ date }) => date === at.date)?.marks ?? [];
  const next = marks.findIndex(({ slot }) => slot.id === at.slot) + by;
  if (next < 0) return { date: at.date, slot: null };
  return { date: at.date, slot: marks[Math.min(next, marks.length - 1)]?.slot.id ?? null };
}
