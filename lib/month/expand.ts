/** The slots of a month: those of its weekly pattern, with the changed ones in their place, and the single ones. */
import { dateOfDay, dayNumber, isoWeekday } from "#lib/calendar/days.ts";
import type { MonthFile, MonthSlot, PatternLine } from "./types.ts";

type Dated = Pick<MonthFile, "dates" | "holidays">;
export type Patterned = Pick<MonthFile, "dates" | "holidays" | "pattern" | "slots">;

/** Every slot, by date, start and id; the instants are for `instants.ts`. */
export function expandMonth(month: Patterned): MonthSlot[] {
  const single = new Set(month.slots.map(({ id }) => id));
  const given = (month.pattern ?? []).flatMap((line) => occurrencesOf(line, month));
  return [...given.filter(({ id }) => !single.has(id)), ...month.slots].sort(byWallTime);
}

export function byWallTime(a: MonthSlot, b: MonthSlot): number {
  for (const key of ["date", "start", "id"] as const) if (a[key] !== b[key]) return a[key] < b[key] ? -1 : 1;
  return 0;
}

/** A line's slots by date, `LINE-YYYYMMDD`; also those that a changed slot stands in place of. */
export function occurrencesOf(line: PatternLine, month: Dated): MonthSlot[] {
  const left = new Set([...(line.except ?? []), ...Object.keys(month.holidays ?? {})]);
  const dates = datesOf(line, month.dates);
  return dates.filter((date) => date >= month.dates.from && !left.has(date)).map((date) => occurrence(line, date));
}

function occurrence(line: PatternLine, date: string): MonthSlot {
  const { days: _d, every: _e, weekStart: _w, nth: _n, from: _f, to: _t, count: _c, except: _x, ...values } = line;
  return { ...values, id: `${line.id}-${date.replaceAll("-", "")}`, date };
}

/**
 * The dates that the line's rule gives from its own `from` on, before exceptions: BYDAY, INTERVAL with WKST, COUNT and
 * UNTIL of RFC 5545 §3.3.10, with BYDAY's ordinals as `nth`.
 */
function datesOf(line: PatternLine, dates: MonthFile["dates"]): string[] {
  const first = dayNumber(line.from ?? dates.from);
  const last = dayNumber(line.to !== undefined && line.to < dates.to ? line.to : dates.to);
  const found: string[] = [];
  for (let day = first; day <= last && found.length < (line.count ?? Number.POSITIVE_INFINITY); day++) {
    if (isGiven(line, day, first)) found.push(dateOfDay(day));
  }
  return found;
}

function isGiven(line: PatternLine, day: number, first: number): boolean {
  const date = dateOfDay(day);
  if (!line.days.includes(isoWeekday(date))) return false;
  const weekStart = line.weekStart ?? 1;
  const weeks = (startOfWeek(day, weekStart) - startOfWeek(first, weekStart)) / 7;
  if (weeks % (line.every ?? 1) !== 0) return false;
  return line.nth === undefined || ordinalsOf(date).some((k) => line.nth?.includes(k));
}

const startOfWeek = (day: number, weekStart: number): number =>
  day - ((isoWeekday(dateOfDay(day)) - weekStart + 7) % 7);

/** The k-th of its weekday in its calendar month, counted from the start and, negative, from the end. */
function ordinalsOf(date: string): [number, number] {
  const ofMonth = Number(date.slice(8));
  const [year, month] = [Number(date.slice(0, 4)), Number(date.slice(5, 7))];
  const days = new Date(Date.UTC(year, month, 0)).getUTCDate();
  return [Math.ceil(ofMonth / 7), -Math.ceil((days - ofMonth + 1) / 7)];
}
