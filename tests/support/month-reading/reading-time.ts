/**
 * A second reading of the month file's times, by the platform's own calendar and zones: every wall time is found by trying
 * each offset that the zone has near it. Slow on purpose; shares nothing with `lib/calendar`.
 */

export const HOUR = 3_600_000;
export const DAY = 24 * HOUR;

export const noonOf = (date: string): Date => new Date(`${date}T12:00:00Z`);
export const plusDays = (date: string, days: number): string =>
  new Date(noonOf(date).getTime() + days * DAY).toISOString().slice(0, 10);
/** Monday 1 .. Sunday 7. */
export const dayOfWeek = (date: string): number => noonOf(date).getUTCDay() || 7;

/** "2026-W10": the year and the number of the week are those of its Thursday, counted from 1 January. */
export function weekNameOf(date: string): string {
  const name = weekNames.get(date) ?? weekCounted(date);
  weekNames.set(date, name);
  return name;
}
const weekNames = new Map<string, string>();

function weekCounted(date: string): string {
  let thursday = date;
  while (dayOfWeek(thursday) > 4) thursday = plusDays(thursday, -1);
  while (dayOfWeek(thursday) < 4) thursday = plusDays(thursday, 1);
  const year = thursday.slice(0, 4);
  let thursdays = 0;
  for (let day = thursday; day.slice(0, 4) === year; day = plusDays(day, -7)) thursdays++;
  return `${year}-W${String(thursdays).padStart(2, "0")}`;
}

export function datesBetween(from: string, to: string): string[] {
  const dates: string[] = [];
  for (let day = from; day <= to; day = plusDays(day, 1)) dates.push(day);
  return dates;
}

const shownBy = new Map<string, Intl.DateTimeFormat>();
/** What the clock of the zone shows, as "2026-03-29 02:30:00". */
export function shownAt(at: number, zone: string): string {
  const format =
    shownBy.get(zone) ?? new Intl.DateTimeFormat("sv-SE", { timeZone: zone, dateStyle: "short", timeStyle: "medium" });
  shownBy.set(zone, format);
  return format.format(at);
}
const asUtc = (shown: string): number => Date.parse(`${shown.replace(" ", "T")}Z`);

export interface ReadingMoment {
  readonly at: number;
  readonly shown: "once" | "skipped" | "twice";
}

const moments = new Map<string, ReadingMoment>();
export function momentOfWall(date: string, time: string, zone: string): ReadingMoment {
  const key = `${date} ${time} ${zone}`;
  const found = moments.get(key) ?? searched(date, time, zone);
  moments.set(key, found);
  return found;
}

function searched(date: string, time: string, zone: string): ReadingMoment {
  const wanted = asUtc(`${date} ${time}:00`);
  const offsets: number[] = [];
  for (let at = wanted - 2 * DAY; at <= wanted + 2 * DAY; at += HOUR / 4) offsets.push(asUtc(shownAt(at, zone)) - at);
  const hits = [...new Set(offsets)]
    .map((offset) => wanted - offset)
    .filter((at) => asUtc(shownAt(at, zone)) === wanted);
  if (hits.length > 0) return { at: Math.min(...hits), shown: hits.length === 1 ? "once" : "twice" };
  // Skipped: the last quarter of an hour that shows less than what is wanted has the offset before the gap.
  let before = wanted - 2 * DAY;
  for (let at = before; asUtc(shownAt(at, zone)) < wanted; at += HOUR / 4) before = at;
  return { at: wanted - (asUtc(shownAt(before, zone)) - before), shown: "skipped" };
}

export const asInstant = (at: number): string => `${new Date(at).toISOString().slice(0, 19)}Z`;
