/** VTIMEZONE (RFC 5545 §3.6.5): the clock changes that the dates of a calendar need, each written out. */
import { dayNumber } from "#lib/calendar/days.ts";
import { momentOf, type OffsetChange, offsetAt, offsetChanges } from "#lib/calendar/zone.ts";

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;
/** A zone with summer time changes twice in these; one that has had none for so long is taken as having none. */
const DAYS_BEFORE = 400;
/** A class lasts at most 480 minutes, so it ends on the next day at the latest. */
const DAYS_AFTER = 2;

/** Lines of the zone for classes on `from` to `to` (dates), unfolded. */
export function zoneLines(zone: string, from: string, to: string): string[] {
  const start = momentOf(dayNumber(from) * DAY_MS, zone).at;
  const end = momentOf((dayNumber(to) + DAYS_AFTER) * DAY_MS, zone).at;
  const changes = offsetChanges(zone, start - DAYS_BEFORE * DAY_MS, end);
  const before = changes.filter(({ at }) => at < start).at(-1);
  const since = changes.filter(({ at }) => at >= start);
  const first = before === undefined ? alwaysSo(offsetAt(start - MINUTE_MS, zone)) : observance(before);
  return ["BEGIN:VTIMEZONE", `TZID:${zone}`, ...first, ...since.flatMap(observance), "END:VTIMEZONE"];
}

function observance({ at, before, after }: OffsetChange): string[] {
  return observanceLines(after > before ? "DAYLIGHT" : "STANDARD", localStamp(at + before), before, after);
}

const alwaysSo = (offset: number): string[] => observanceLines("STANDARD", "19700101T000000", offset, offset);

function observanceLines(name: "STANDARD" | "DAYLIGHT", onset: string, before: number, after: number): string[] {
  const offsets = [`TZOFFSETFROM:${offsetWords(before)}`, `TZOFFSETTO:${offsetWords(after)}`];
  return [`BEGIN:${name}`, `DTSTART:${onset}`, ...offsets, `END:${name}`];
}

/** A wall time, written as the ms it would be in UTC, as '20260329T010000'. */
const localStamp = (wall: number): string => new Date(wall).toISOString().slice(0, 19).replaceAll(/[-:]/g, "");

/** '+0530' */
function offsetWords(offset: number): string {
  const minutes = Math.round(Math.abs(offset) / MINUTE_MS);
  const two = (n: number) => String(n).padStart(2, "0");
  return `${offset < 0 ? "-" : "+"}${two(Math.floor(minutes / 60))}${two(minutes % 60)}`;
}
