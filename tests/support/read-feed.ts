/** A calendar as two independent programs read it, in one shape. */
import ICAL from "ical.js";
import ical from "node-ical";

export interface ReadEvent {
  readonly uid: string;
  /** The wall time that is written, 'YYYY-MM-DDTHH:MM'. */
  readonly wall: string;
  /** ISO 8601 instants, as the reader works them out. */
  readonly from: string;
  readonly to: string;
  readonly status: string;
  readonly transparent: boolean;
  readonly sequence: number;
  readonly stamp: string;
  readonly summary: string;
  readonly location: string | null;
  readonly description: string;
}

export interface ReadFeed {
  readonly uid: string;
  readonly name: string;
  readonly changedAt: string;
  readonly events: readonly ReadEvent[];
}

const instant = (date: Date): string => date.toISOString().replace(".000Z", "Z");

/** By ical.js: instants come from the feed's own VTIMEZONE and nothing else. */
export function readByIcalJs(feed: string): ReadFeed {
  const calendar = new ICAL.Component(ICAL.parse(feed));
  const text = (name: string) => String(calendar.getFirstPropertyValue(name) ?? "");
  return {
    uid: text("uid"),
    // NAME is TEXT (RFC 7986 §5.1), which this reader does not know yet.
    name: text("name").replaceAll(/\\(.)/g, "$1"),
    changedAt: text("last-modified"),
    events: calendar.getAllSubcomponents("vevent").map(eventOfIcalJs),
  };
}

function eventOfIcalJs(component: ICAL.Component): ReadEvent {
  const event = new ICAL.Event(component);
  return {
    uid: event.uid,
    wall: event.startDate.toString().slice(0, 16),
    from: instant(event.startDate.toJSDate()),
    // Its own end adds minutes on the wall clock; RFC 5545 §3.3.6 counts hours and minutes as elapsed time.
    to: instant(new Date(event.startDate.toJSDate().getTime() + event.duration.toSeconds() * 1000)),
    status: String(component.getFirstPropertyValue("status")),
    transparent: component.getFirstPropertyValue("transp") === "TRANSPARENT",
    sequence: Number(component.getFirstPropertyValue("sequence")),
    stamp: String(component.getFirstPropertyValue("dtstamp")),
    summary: event.summary,
    location: component.getFirstPropertyValue("location") === null ? null : event.location,
    description: event.description,
  };
}

/** By node-ical: instants come from the zone's name and the platform's own tables. */
export function readByNodeIcal(feed: string): readonly Pick<ReadEvent, "uid" | "from" | "to" | "summary" | "status">[] {
  return Object.values(ical.sync.parseICS(feed)).flatMap((part) =>
    part?.type === "VEVENT"
      ? [
          {
            uid: part.uid,
            from: instant(new Date(part.start)),
            to: instant(new Date(part.end ?? Number.NaN)),
            summary: wordsOf(part.summary),
            status: String(part.status),
          },
        ]
      : [],
  );
}

const wordsOf = (value: unknown): string =>
  typeof value === "object" && value !== null && "val" in value ? String(value.val) : String(value);
