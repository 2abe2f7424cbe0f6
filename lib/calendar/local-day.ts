/** Times of day by the wall clock of a zone, for what is sent once a day. */
import { isTimeZone, momentOf, wallTimeAt } from "./zone.ts";

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

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
  const today = Math.floor(wallTimeAt(now, zone) / DAY_MS) * DAY_MS;
  const days = [today, today - DAY_MS, today - 2 * DAY_MS];
  return days.map((day) => momentOf(day + ofDay, zone).at).find((at) => at <= now) ?? Number.NEGATIVE_INFINITY;
}

/** The first moment after `now` at which it is `time` in `zone`. Undefined for no time. */
export function nextTimeOfDay(time: string, zone: string, now: number): number | undefined {
  const ofDay = clockMs(time);
  if (ofDay === undefined || !isTimeZone(zone)) return undefined;
  const today = Math.floor(wallTimeAt(now, zone) / DAY_MS) * DAY_MS;
  const days = [today - DAY_MS, today, today + DAY_MS, today + 2 * DAY_MS];
  return days.map((day) => momentOf(day + ofDay, zone).at).find((at) => at > now);
}
