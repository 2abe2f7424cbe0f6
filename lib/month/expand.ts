/** The slots of a month: those of its weekly pattern, with the changed ones in their place, and the single ones. */
import { addMonths, dateOfDay, dayNumber, monthOf } from "#lib/calendar/days.ts";
import type { MonthFile, MonthSlot, PatternLine } from "./types.ts";

type Dated = Pick<MonthFile, "dates" | "holidays">;
export type Patterned = Pick<MonthFile, "dates" | "holidays" | "pattern" | "slots">;

/** Every slot, by date, start and id; the instants are for `instants.ts`. */
export function expandMonth(month: Patterned): MonthSlot[] {
  return joinSlots(
    month.slots,
    (month.pattern ?? []).map((line) => occurrencesOf(line, month)),
  ).sort(byWallTime);
}

/** The slots of the lines with the changed ones in their place, and the single ones; not sorted. */
export function joinSlots(slots: readonly MonthSlot[], given: readonly (readonly MonthSlot[])[]): MonthSlot[] {
  const single = new Set(slots.map(({ id }) => id));
  return [...given.flat().filter(({ id }) => !single.has(id)), ...slots];
}

export function byWallTime(a: MonthSlot, b: MonthSlot): number {
  for (const key of ["date", "start", "id"] as const) if (a[key] !== b[key]) return a[key] < b[key] ? -1 : 1;
  return 0;
}

/** A line's slots by date, `LINE-YYYYMMDD`; also those that a changed slot stands in place of. */
export function occurrencesOf(line: PatternLine, month: Dated): MonthSlot[] {
  const left = new Set([...(line.except ?? []), ...Object.keys(month.holidays ?? {})]);
  const from = dayNumber(month.dates.from);
  const days = daysOfLine(line, month.dates).filter((day) => day >= from);
  return days
    .map(dateOfDay)
    .filter((date) => !left.has(date))
    .map((date) => occurrence(line, date));
}

function occurrence(line: PatternLine, date: string): MonthSlot {
  const { days: _d, every: _e, weekStart: _w, nth: _n, from: _f, to: _t, count: _c, except: _x, ...values } = line;
  return { ...values, id: `${line.id}-${date.replaceAll("-", "")}`, date };
}

/** Day numbers, both inclusive. */
interface Span {
  readonly first: number;
  readonly last: number;
}

/**
 * The days that the line's rule gives before exceptions: BYDAY, INTERVAL with WKST, COUNT and UNTIL of RFC 5545 §3.3.10,
 * with BYDAY's ordinals as `nth`. Days before the month may be left out where nothing counts them.
 */
function daysOfLine(line: PatternLine, dates: MonthFile["dates"]): number[] {
  const from = dayNumber(dates.from);
  const first = line.from === undefined ? from : dayNumber(line.from);
  const last = dayNumber(line.to !== undefined && line.to < dates.to ? line.to : dates.to);
  // A `count` has to be counted from the line's first day, which may be years back.
  const span = { first: line.count === undefined ? Math.max(first, from) : first, last };
  const days = line.nth === undefined ? weeklyDays(line, first, span) : monthlyDays(line, line.nth, span);
  return days.slice(0, line.count);
}

/** `first`: the line's own first day, from whose week the weeks are counted. */
function weeklyDays(line: PatternLine, first: number, span: Span): number[] {
  const { every = 1, weekStart = 1, count = Number.POSITIVE_INFINITY } = line;
  const offsets = line.days.map((day) => (day - weekStart + 7) % 7).sort((a, b) => a - b);
  const weekOfFirst = startOfWeek(first, weekStart);
  const step = 7 * every;
  const found: number[] = [];
  const skipped = Math.floor(Math.max(0, span.first - weekOfFirst) / step);
  for (let week = weekOfFirst + skipped * step; week <= span.last && found.length < count; week += step) {
    for (const offset of offsets) if (isIn(span, week + offset)) found.push(week + offset);
  }
  return found;
}

/** 1970-01-01 was a Thursday. */
const startOfWeek = (day: number, weekStart: number): number => day - weekdayFrom(day, weekStart);
const weekdayFrom = (day: number, weekStart: number): number => (((day + 4 - weekStart) % 7) + 7) % 7;

const isIn = ({ first, last }: Span, day: number): boolean => day >= first && day <= last;

function monthlyDays({ days, count = Number.POSITIVE_INFINITY }: PatternLine, nth: readonly number[], span: Span) {
  const found: number[] = [];
  let month = monthOf(dateOfDay(span.first));
  for (let start = dayNumber(`${month}-01`); start <= span.last && found.length < count; ) {
    month = addMonths(month, 1);
    const next = dayNumber(`${month}-01`);
    found.push(...daysOfNth(days, nth, { first: start, last: next - 1 }).filter((day) => isIn(span, day)));
    start = next;
  }
  return found;
}

/** The k-th of each weekday in a calendar month, counted from its end when negative. In order, each once. */
function daysOfNth(days: readonly number[], nth: readonly number[], month: Span): number[] {
  const found = days.flatMap((weekday) => {
    const firstOf = month.first + ((7 - weekdayFrom(month.first, weekday)) % 7);
    const lastOf = month.last - weekdayFrom(month.last, weekday);
    return nth.map((k) => (k > 0 ? firstOf + 7 * (k - 1) : lastOf + 7 * (k + 1)));
  });
  return [...new Set(found)].filter((day) => isIn(month, day)).sort((a, b) => a - b);
}
