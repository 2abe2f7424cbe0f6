/** Moments on the wall clock of a time zone, across changes between winter and summer time. Pure: zones are the platform's. */

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

const formats = new Map<string, Intl.DateTimeFormat>();
/** There are fewer zones; spellings are without number ("europe/LONDON", "+01:07"). */
const MOST_FORMATS = 600;

/** Throws RangeError for a zone that the platform does not know. */
function formatOf(zone: string): Intl.DateTimeFormat {
  const known = formats.get(zone);
  if (known) return known;
  const parts = { year: "numeric", month: "numeric", day: "numeric", hour: "numeric", minute: "numeric" } as const;
  const made = new Intl.DateTimeFormat("en-GB", { timeZone: zone, calendar: "gregory", hourCycle: "h23", ...parts });
  if (formats.size >= MOST_FORMATS) formats.clear();
  formats.set(zone, made);
  return made;
}

export function isTimeZone(zone: string): boolean {
  try {
    formatOf(zone);
    return true;
  } catch {
    return false;
  }
}

/** What the wall clock shows at `at` (ms since the epoch), written as if it were UTC, to the minute. */
function wallClock(at: number, zone: string): number {
  const part = new Map(
    formatOf(zone)
      .formatToParts(at)
      .map(({ type, value }) => [type, Number(value)]),
  );
  const of = (type: Intl.DateTimeFormatPartTypes) => part.get(type) ?? 0;
  return Date.UTC(of("year"), of("month") - 1, of("day"), of("hour"), of("minute"));
}

const offsetAt = (at: number, zone: string): number => wallClock(at, zone) - Math.floor(at / MINUTE_MS) * MINUTE_MS;

/**
 * When the wall clock shows `wall`: of a time that comes twice, the first; a time that is left out is as much later as was
 * left out.
 */
function momentOf(wall: number, zone: string): number {
  const before = wall - offsetAt(wall - DAY_MS, zone);
  const after = wall - offsetAt(wall + DAY_MS, zone);
  const shown = [before, after].filter((at) => wallClock(at, zone) === wall);
  return shown.length > 0 ? Math.min(...shown) : before;
}

const CLOCK = /^([01]\d|2[0-3]):([0-5]\d)$/;

/** "07:30" in ms after midnight; undefined for anything else. */
function clockMs(time: string): number | undefined {
  const [, hours, minutes] = CLOCK.exec(time) ?? [];
  return hours === undefined ? undefined : (Number(hours) * 60 + Number(minutes)) * MINUTE_MS;
}

export const isClockTime = (time: string): boolean => CLOCK.test(time);

/** The last moment up to `now` at which it was `time` ("07:30") in `zone`, in ms since the epoch. -Infinity for no time. */
export function lastTimeOfDay(time: string, zone: string, now: number): number {
  const ofDay = clockMs(time);
  if (ofDay === undefined || !isTimeZone(zone)) return Number.NEGATIVE_INFINITY;
  const today = Math.floor(wallClock(now, zone) / DAY_MS) * DAY_MS;
  const days = [today, today - DAY_MS, today - 2 * DAY_MS];
  return days.map((day) => momentOf(day + ofDay, zone)).find((at) => at <= now) ?? Number.NEGATIVE_INFINITY;
}

/** "Monday, 30 November" in `zone`. */
export const dayInZone = (at: number, zone: string): string =>
  new Date(at).toLocaleDateString("en-GB", { weekday: "long", day: "numeric", month: "long", timeZone: zone });

/** "14:05" in `zone`. */
export const timeInZone = (at: number, zone: string): string =>
  new Date(at).toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit", timeZone: zone });
