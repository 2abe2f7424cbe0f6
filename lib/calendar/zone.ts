/**
 * The wall clock of a time zone (IANA name), across its changes between winter and summer time. Instants are ms since the
 * epoch; a wall time is written as the ms it would be if the zone were UTC. Pure: the zones are the platform's.
 */

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

/** The zone of this browser, or of this server. */
export const deviceZone = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone || "UTC";

/** What the wall clock shows at `at` (ms since the epoch), written as if it were UTC, to the minute. */
export function wallTimeAt(at: number, zone: string): number {
  const part = new Map(
    formatOf(zone)
      .formatToParts(at)
      .map(({ type, value }) => [type, Number(value)]),
  );
  const of = (type: Intl.DateTimeFormatPartTypes) => part.get(type) ?? 0;
  return Date.UTC(of("year"), of("month") - 1, of("day"), of("hour"), of("minute"));
}

/** What the wall clock is ahead of UTC at `at`, in ms. */
export const offsetAt = (at: number, zone: string): number =>
  wallTimeAt(at, zone) - Math.floor(at / MINUTE_MS) * MINUTE_MS;

/** How often the wall clock shows a time: a clock put forward skips some, one put back shows some twice. */
type WallTimeKind = "once" | "skipped" | "twice";

export interface WallMoment {
  readonly at: number;
  readonly kind: WallTimeKind;
}

/**
 * When the wall clock shows `wall`. A skipped time takes the offset before the gap; of one that comes twice it is the first
 * (RFC 5545 §3.3.5). Throws RangeError for an unknown zone.
 */
export const momentOf = (wall: number, zone: string): WallMoment => momentBy(wall, (at) => offsetAt(at, zone));

function momentBy(wall: number, offset: (at: number) => number): WallMoment {
  const before = wall - offset(wall - DAY_MS);
  const after = wall - offset(wall + DAY_MS);
  const shown = (before === after ? [before] : [before, after]).filter((at) => at + offset(at) === wall);
  const [first, second] = shown;
  if (first === undefined) return { at: before, kind: "skipped" };
  return second === undefined ? { at: first, kind: "once" } : { at: Math.min(first, second), kind: "twice" };
}

/** A zone's wall clock over some weeks, for many times at once: `momentOf` and `wallTimeAt` without asking the platform. */
export interface WallClock {
  readonly momentOf: (wall: number) => WallMoment;
  readonly wallTimeAt: (at: number) => number;
}

/** Holds from two days before `from` to two days after `to` (wall times or instants, whichever). */
export function zoneClock(zone: string, from: number, to: number): WallClock {
  // An instant is at most a day from its wall time.
  const [first, last] = [from - 4 * DAY_MS, to + 4 * DAY_MS];
  const changes = offsetChanges(zone, first, last);
  const start = offsetAt(first, zone);
  const offset = (at: number): number => changes.findLast((change) => change.at <= at)?.after ?? start;
  return { momentOf: (wall) => momentBy(wall, offset), wallTimeAt: (at) => at + offset(at) };
}

/** The zone's clock put forward or back at `at`; offsets in ms. */
export interface OffsetChange {
  readonly at: number;
  readonly before: number;
  readonly after: number;
}

/** The changes of the zone's offset after `from`, up to and including `to`, in order. Looks once a day, then to the minute. */
export function offsetChanges(zone: string, from: number, to: number): OffsetChange[] {
  const changes: OffsetChange[] = [];
  for (let start = from; start < to; start += DAY_MS) {
    const end = Math.min(start + DAY_MS, to);
    const before = offsetAt(start, zone);
    const after = offsetAt(end, zone);
    if (before !== after) changes.push({ at: changeBetween(zone, start, end), before, after });
  }
  return changes;
}

/** The first whole minute in (low, high] with the offset of `high`. */
function changeBetween(zone: string, low: number, high: number): number {
  const after = offsetAt(high, zone);
  let [from, to] = [Math.floor(low / MINUTE_MS), Math.ceil(high / MINUTE_MS)];
  while (to - from > 1) {
    const middle = Math.floor((from + to) / 2);
    if (offsetAt(middle * MINUTE_MS, zone) === after) to = middle;
    else from = middle;
  }
  return to * MINUTE_MS;
}
