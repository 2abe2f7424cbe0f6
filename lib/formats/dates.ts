/** Days, times of day and months in the reader's words. Dates are 'YYYY-MM-DD', months 'YYYY-MM', wall times 'HH:MM', moments ms since the epoch. */
import { dayNumber, isoWeekday } from "#lib/calendar/days.ts";
import { wallTimeAt } from "#lib/calendar/zone.ts";
import type { DatePattern, Formats } from "./formats.ts";

const DAY_MS = 86_400_000;

const pad = (n: number): string => String(n).padStart(2, "0");

const put = (pattern: string, values: Readonly<Record<string, string | undefined>>): string =>
  pattern.replace(/\{(.)\}/g, (_, sign: string) => values[sign] ?? "");

interface DayParts {
  /** From 0: Monday, January. */
  readonly weekday: number;
  readonly month: number;
  readonly day: number;
  readonly year?: number;
}

const written = ({ weekday, month, day, year }: DayParts, pattern: DatePattern, { words }: Formats): string =>
  put(words.patterns[pattern], {
    ...{ W: words.days[weekday], w: words.daysShort[weekday], d: String(day), y: String(year) },
    ...{ M: words.months[month], m: words.monthsShort[month], A: words.monthsAlone[month] },
  });

/** `date` must be a day; the pattern one without a time. */
function filled(date: string, pattern: DatePattern, f: Formats): string {
  const [year, month, day] = date.split("-").map(Number);
  const parts = { weekday: isoWeekday(date) - 1, month: Number(month) - 1, day: Number(day), year: Number(year) };
  return written(parts, pattern, f);
}

/** "Tue 3 Nov" of its parts, where the year is not known. */
export const writtenDay = (parts: DayParts, f: Formats): string => written(parts, "weekdayDateShort", f);
/** "Tuesday 3 November" */
export const dayWords = (date: string, f: Formats): string => filled(date, "weekdayDate", f);
/** "Tue 3 Nov" */
export const shortDayWords = (date: string, f: Formats): string => filled(date, "weekdayDateShort", f);
/** "3 November", or "3 November 2026" */
export const dateText = (date: string, f: Formats, year = false): string => filled(date, year ? "dateYear" : "date", f);
/** "3 Nov" */
export const shortDate = (date: string, f: Formats): string => filled(date, "dateShort", f);
/** "November 2026" */
export const monthTitle = (month: string, f: Formats): string => filled(`${month}-01`, "monthYear", f);
/** "November" */
export const monthName = (month: string, { words }: Formats): string =>
  words.monthsAlone[Number(month.slice(5)) - 1] ?? "";
/** "Tuesday" */
const dayName = (date: string, f: Formats): string => weekdayName(isoWeekday(date), f);
/** "Tue" */
export const shortDayName = (date: string, { words }: Formats): string => words.daysShort[isoWeekday(date) - 1] ?? "";
/** 1 Monday to 7 Sunday. */
const weekdayName = (weekday: number, { words }: Formats): string => words.days[weekday - 1] ?? "";

/** "Tu": where seven stand in a row. */
export const tinyWeekday = (weekday: number, { words }: Formats): string =>
  words.daysShort[weekday - 1]?.slice(0, 2) ?? "";

export const dayOfMonth = (date: string): number => Number(date.slice(8));

/** 1 Monday to 7 Sunday, in the order of the reader's week. */
export const weekdaysInOrder = ({ weekStart }: Pick<Formats, "weekStart">): readonly number[] =>
  Array.from({ length: 7 }, (_, i) => ((weekStart - 1 + i) % 7) + 1);

/** A wall time 'HH:MM' or 'HH:MM:SS': "19:05", "7:05 pm". What is no time stays as it is. */
export function timeWords(time: string, { clock, words }: Formats): string {
  const [, hours, n, s] = /^(\d\d):(\d\d)(?::(\d\d))?$/.exec(time) ?? [];
  if (hours === undefined) return time;
  const hour = Number(hours);
  const name = `${s === undefined ? "time" : "seconds"}${clock}` as const;
  const h = clock === "24" ? hours : String(hour % 12 || 12);
  return put(words.patterns[name], { h, n, s, p: words.halves[hour < 12 ? 0 : 1] });
}

/** A whole hour where there is little room: "19:00", "7 pm". */
export const hourWords = (time: string, f: Formats): string =>
  f.clock === "12" && time.endsWith(":00")
    ? put(f.words.patterns.hour12, {
        h: String(Number(time.slice(0, 2)) % 12 || 12),
        p: f.words.halves[time < "12" ? 0 : 1],
      })
    : timeWords(time, f);

/** "Tuesday 3 November, 19:05" of a day and a wall time. */
export const dayAndTime = (date: string, time: string, f: Formats): string =>
  `${dayWords(date, f)}, ${timeWords(time, f)}`;

/** The day and the wall time of a moment in the reader's zone. */
export function wallOf(at: number, { zone }: Pick<Formats, "zone">): { readonly date: string; readonly time: string } {
  const text = new Date(wallTimeAt(at, zone)).toISOString();
  return { date: text.slice(0, 10), time: text.slice(11, 16) };
}

/** The day of a moment: "Tuesday 3 November". */
export const dayOfMoment = (at: number, f: Formats): string => dayWords(wallOf(at, f).date, f);
/** The time of day of a moment: "19:05". */
export const timeOfMoment = (at: number, f: Formats): string => timeWords(wallOf(at, f).time, f);
/** The time of day of a moment, to the second: every zone's offset is whole minutes. */
export const timeWithSeconds = (at: number, f: Formats): string =>
  timeWords(`${wallOf(at, f).time}:${pad(Math.floor(at / 1000) % 60)}`, f);
/** "3 November, 19:05", or "3 November 2026, 19:05". */
export function momentWords(at: number, f: Formats, year = false): string {
  const { date, time } = wallOf(at, f);
  return `${dateText(date, f, year)}, ${timeWords(time, f)}`;
}
/** "3 November", or "3 November 2026". */
export const dateOfMoment = (at: number, f: Formats, year = false): string => dateText(wallOf(at, f).date, f, year);
/** "3 Nov" */
export const shortDateOf = (at: number, f: Formats): string => shortDate(wallOf(at, f).date, f);
/** "3 Nov, 19:05" */
export const shortMoment = (at: number, f: Formats): string => `${shortDateOf(at, f)}, ${timeOfMoment(at, f)}`;

/** A day as seen from another: "today", "tomorrow", its weekday's name within the week ahead, else "3 November". */
export function relativeDay(date: string, today: string, f: Formats): string {
  const ahead = dayNumber(date) - dayNumber(today);
  if (ahead === 0) return "today";
  if (ahead === 1) return "tomorrow";
  return ahead > 1 && ahead < 7 ? dayName(date, f) : dateText(date, f);
}

/** The first day of the reader's week that `date` is in. */
export function weekBegins(date: string, { weekStart }: Pick<Formats, "weekStart">): string {
  const day = dayNumber(date);
  const back = (isoWeekday(date) - weekStart + 7) % 7;
  return new Date((day - back) * DAY_MS).toISOString().slice(0, 10);
}
