/** A second reading of a month's slots: the pattern day by day, and when each slot begins and ends. */
import type { MonthFile, MonthSlot, PatternLine } from "#lib/month/types.ts";
import { datesBetween, dayOfWeek, momentOfWall, plusDays } from "./reading-time.ts";

export interface ReadSlot {
  readonly slot: MonthSlot;
  readonly id: string;
  readonly date: string;
  /** ms since the epoch. */
  readonly from: number;
  readonly to: number;
  readonly shown: "once" | "skipped" | "twice";
}

const read = new WeakMap<MonthFile, ReadSlot[]>();
/** Every slot of the file and its pattern, by start, then id. */
export function readSlots(month: MonthFile): ReadSlot[] {
  const slots = read.get(month) ?? expanded(month);
  read.set(month, slots);
  return slots;
}

function expanded(month: MonthFile): ReadSlot[] {
  const slots: MonthSlot[] = [...month.slots];
  for (const line of month.pattern ?? []) {
    for (const date of datesOfLine(line, month)) {
      const id = `${line.id}-${date.slice(0, 4)}${date.slice(5, 7)}${date.slice(8)}`;
      if (!month.slots.some((slot) => slot.id === id)) slots.push(slotOfLine(line, id, date));
    }
  }
  return slots.map((slot) => timed(slot, month.zone)).sort(inOrder);
}

export const inOrder = (a: ReadSlot, b: ReadSlot): number => a.from - b.from || codeOrder(a.id, b.id);
export const codeOrder = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function timed(slot: MonthSlot, zone: string): ReadSlot {
  const { at, shown } = momentOfWall(slot.date, slot.start, zone);
  return { slot, id: slot.id, date: slot.date, from: at, to: at + slot.minutes * 60_000, shown };
}

function datesOfLine(line: PatternLine, month: MonthFile): string[] {
  const from = line.from ?? month.dates.from;
  const to = line.to !== undefined && line.to < month.dates.to ? line.to : month.dates.to;
  const ruled = datesBetween(from, to).filter((date) => {
    if (!line.days.includes(dayOfWeek(date))) return false;
    if (weeksApart(from, date, line.weekStart ?? 1) % (line.every ?? 1) !== 0) return false;
    return line.nth === undefined || line.nth.some((n) => nthOfMonth(date, n));
  });
  const counted = line.count === undefined ? ruled : ruled.slice(0, line.count);
  return counted.filter((date) => {
    const holiday = Object.hasOwn(month.holidays ?? {}, date);
    return date >= month.dates.from && !(line.except ?? []).includes(date) && !holiday;
  });
}

/** Steps from week to week, from the first day of the one to that of the other. */
function weeksApart(from: string, date: string, weekStart: number): number {
  const firstDay = (day: string): string => (dayOfWeek(day) === weekStart ? day : firstDay(plusDays(day, -1)));
  const until = firstDay(date);
  let weeks = 0;
  for (let day = firstDay(from); day < until; day = plusDays(day, 7)) weeks++;
  return weeks;
}

/** Whether `date` is the n-th of its day in its month, by listing all of them. */
function nthOfMonth(date: string, n: number): boolean {
  const month = date.slice(0, 7);
  const same = datesBetween(`${month}-01`, `${month}-31`).filter(
    (day) => day.slice(0, 7) === month && dayOfWeek(day) === dayOfWeek(date),
  );
  return (n > 0 ? same[n - 1] : same[same.length + n]) === date;
}

function slotOfLine(line: PatternLine, id: string, date: string): MonthSlot {
  const { start, minutes, room, coach, regulars, theme, plan, people, locked, note } = line;
  const values = { start, minutes, room, coach, regulars, theme, plan, people, locked, note };
  const given = Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
  return { ...(given as typeof values & { start: string; minutes: number }), id, date } as MonthSlot;
}
