/** Calendars as they were made last, those that were read last: one is some ten to fifty kB, and addresses come and go. */
import { Kept } from "#lib/memo/kept.ts";

export interface CalendarText {
  readonly text: string;
  /** Names these very octets: an entity tag without its quotes. */
  readonly tag: string;
}

/** A team of thirty, with its rooms and the whole studio, several times over. Our own choice. */
const MOST_CALENDARS = 200;

export class MadeCalendars {
  private readonly byFeed = new Map<string, Kept<CalendarText>>();

  /** Empty for one that was not made yet, or not read for long. */
  of(feedId: string): Kept<CalendarText> {
    const kept = this.byFeed.get(feedId) ?? new Kept<CalendarText>();
    this.byFeed.delete(feedId);
    this.byFeed.set(feedId, kept);
    for (const oldest of this.byFeed.keys()) if (this.byFeed.size > MOST_CALENDARS) this.byFeed.delete(oldest);
    return kept;
  }
}
