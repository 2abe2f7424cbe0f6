/**
 * Days of a month as plain strings ('YYYY-MM-DD', month 'YYYY-MM', time 'HH:MM'), without time zone or locale; weeks begin
 * on Monday (ISO 8601). A class takes place at its town's wall-clock time, so nothing here converts hours.
 */

const DAY_MS = 86_400_000;
const DATE = /^(\d{4})-(\d{2})-(\d{2})$/;
const MONTH = /^(\d{4})-(0[1-9]|1[0-2])$/;
const TIME = /^(?:[01]\d|2[0-3]):[0-5]\d$/;

const pad = (n: number, width: number) => String(n).padStart(width, "0");

/** Days since 1970-01-01; NaN when `date` is not a calendar day. */
export function dayNumber(date: string): number {
  const m = DATE.exec(date);
  if (!m) return Number.NaN;
  const day = Date.UTC(Number(m[1]), Number(m[2]) - 1, Number(m[3])) / DAY_MS;
  return dateOfDay(day) === date ? day : Number.NaN;
}

/** The date of a day number, the inverse of `dayNumber` for the years 1000 to 9999. */
export function dateOfDay(day: number): string {
  const d = new Date(day * DAY_MS);
  return `${pad(d.getUTCFullYear(), 4)}-${pad(d.getUTCMonth() + 1, 2)}-${pad(d.getUTCDate(), 2)}`;
}

export const isDate = (value: string): boolean => !Number.isNaN(dayNumber(value));
export const isMonth = (value: string): boolean => MONTH.test(value);
export const isTime = (value: string): boolean => TIME.test(value);
export const monthOf = (date: string): string => date.slice(0, 7);

/** Minutes since midnight; NaN when `time` is not 'HH:MM' of a 24-hour day. */
export function minuteOfDay(time: string): number {
  return isTime(time) ? Number(time.slice(0, 2)) * 60 + Number(time.slice(3)) : Number.NaN;
}

/** Every day of a month in order; empty when `month` is not a month. */
export function daysOfMonth(month: string): string[] {
  if (!isMonth(month)) return [];
  const first = dayNumber(`${month}-01`);
  const days = dayNumber(`${addMonths(month, 1)}-01`) - first;
  return Array.from({ length: days }, (_, i) => dateOfDay(first + i));
}

/** The month `n` months later (or earlier, when negative). */
export function addMonths(month: string, n: number): string {
  const months = Number(month.slice(0, 4)) * 12 + Number(month.slice(5)) - 1 + n;
  return `${pad(Math.floor(months / 12), 4)}-${pad((months % 12) + 1, 2)}`;
}

/** 1 Monday to 7 Sunday (ISO 8601). 1970-01-01 was a Thursday. */
export function isoWeekday(date: string): number {
  const day = dayNumber(date);
  return ((((day + 3) % 7) + 7) % 7) + 1;
}

/**
 * The ISO 8601 week of a day. A week belongs to the year of its Thursday, so the first days of January may belong to the
 * last week of the year before.
 */
export function isoWeek(date: string): { year: number; week: number } {
  const thursday = dayNumber(date) - isoWeekday(date) + 4;
  const year = Number(dateOfDay(thursday).slice(0, 4));
  return { year, week: Math.floor((thursday - dayNumber(`${pad(year, 4)}-01-01`)) / 7) + 1 };
}

/** "2026-W10". */
export function weekText(date: string): string {
  const { year, week } = isoWeek(date);
  return `${pad(year, 4)}-W${pad(week, 2)}`;
}

/** A month as weeks of seven days, Monday first; null where a day belongs to the neighbouring month. */
export function weeksOfMonth(month: string): (string | null)[][] {
  const days: (string | null)[] = daysOfMonth(month);
  if (days.length === 0) return [];
  const before = isoWeekday(`${month}-01`) - 1;
  const cells = [...Array<null>(before).fill(null), ...days];
  while (cells.length % 7 !== 0) cells.push(null);
  return Array.from({ length: cells.length / 7 }, (_, i) => cells.slice(i * 7, i * 7 + 7));
}
