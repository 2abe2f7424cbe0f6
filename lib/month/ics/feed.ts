/**
 * A calendar to subscribe to (RFC 5545; NAME, UID, LAST-MODIFIED and REFRESH-INTERVAL of the calendar: RFC 7986). It depends on the
 * months alone, never on when it is made: where nothing changed it is the same, octet for octet.
 */
import type { MonthFile } from "../types.ts";
import { type CalendarEvent, type CalendarOf, eventsOf, ofId, stampOf } from "./events.ts";
import { contentLine, textValue } from "./text.ts";
import { uuidOfName } from "./uuid.ts";
import { zoneLines } from "./zone-part.ts";

/** In order of time. */
export type SeveralMonths = readonly [MonthFile, ...MonthFile[]];

/** The calendar of one month, as the contract of its file has it. `of` names a coach or a room that the month knows. */
export const calendarOf = (month: MonthFile, of: CalendarOf): string => written([month], of, month.title);

/**
 * One calendar of several months, named after the studio. It has the UID that each month's own has: a reader takes them for
 * one calendar. Of a class that stands in two months the later revision counts. `since`: the INSTANT at which these became the
 * months of the calendar; it was changed then, if nothing of it was later.
 */
export const joinedCalendarOf = (months: SeveralMonths, of: CalendarOf, since?: string): string =>
  written(months, of, newestOf(months).studio.name, since);

const newestOf = (months: SeveralMonths): MonthFile => months.at(-1) ?? months[0];

function written(months: SeveralMonths, of: CalendarOf, title: string, since?: string): string {
  const events = laterRevisions(months.flatMap((month) => eventsOf(month, of))).sort(inOrder);
  const zones = zonesOf(months).flatMap(({ zone, from, to }) => zoneLines(zone, from, to));
  const lines = [
    ...headLines(months, of, title, latestOf(months, events, since)),
    ...zones,
    ...events.flatMap((event) => event.lines),
  ];
  return [...lines, "END:VCALENDAR"].map(contentLine).join("");
}

/** By instant, then by id. */
const inOrder = (a: CalendarEvent, b: CalendarEvent): number =>
  a.start - b.start || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

const latestOf = (months: SeveralMonths, events: readonly CalendarEvent[], since = ""): string =>
  [since, ...months.map(({ changedAt }) => changedAt), ...events.map(({ stamp }) => stamp)].sort().at(-1) ?? since;

function headLines(months: SeveralMonths, of: CalendarOf, title: string, latest: string): string[] {
  const whose = months.map((month) => partName(month, of)).findLast((name) => name !== undefined);
  return [
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Springline//month 1//EN",
    "CALSCALE:GREGORIAN",
    `UID:${uuidOfName(newestOf(months).studio.uid, calendarName(of))}`,
    `LAST-MODIFIED:${stampOf(latest)}`,
    `NAME:${textValue(whose === undefined ? title : `${title}, ${whose}`)}`,
    "REFRESH-INTERVAL;VALUE=DURATION:PT1H",
  ];
}

function calendarName({ coach, room }: CalendarOf): string {
  if (coach !== undefined) return `calendar/coach/${coach}`;
  return room === undefined ? "calendar/studio" : `calendar/room/${room}`;
}

function partName(month: MonthFile, { coach, room }: CalendarOf): string | undefined {
  return (coach === undefined ? ofId(month.rooms, room) : ofId(month.coaches, coach))?.name;
}

/** One event of each class: the higher sequence, else the later stamp, else the later month's. */
function laterRevisions(events: readonly CalendarEvent[]): CalendarEvent[] {
  const byId = new Map<string, CalendarEvent>();
  for (const event of events) {
    const known = byId.get(event.id);
    if (known === undefined || !isEarlier(event, known)) byId.set(event.id, event);
  }
  return [...byId.values()];
}

const isEarlier = (a: CalendarEvent, b: CalendarEvent): boolean =>
  a.sequence === b.sequence ? a.stamp < b.stamp : a.sequence < b.sequence;

interface ZoneSpan {
  readonly zone: string;
  readonly from: string;
  readonly to: string;
}

/** The dates that each zone is needed for: a studio may have moved its clock between two months. */
function zonesOf(months: SeveralMonths): ZoneSpan[] {
  const spans = new Map<string, ZoneSpan>();
  for (const { zone, dates } of months) {
    const known = spans.get(zone) ?? { zone, ...dates };
    const ends = [known.from, known.to, dates.from, dates.to].sort();
    spans.set(zone, { zone, from: ends[0] ?? dates.from, to: ends.at(-1) ?? dates.to });
  }
  return [...spans.values()];
}
