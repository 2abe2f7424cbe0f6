/** A calendar as it is read at its secret address. Anybody may call this, so it costs little for whoever only guesses. */
import type { Db } from "#db/connection.ts";
import { type FeedRow, feedBySecret, setFeedRead } from "#db/repos/calendar-feed-repo.ts";
import { sha256Hex } from "#lib/canonical/canonical.ts";
import type { CalendarOf } from "#lib/month/ics/events.ts";
import { joinedCalendarOf } from "#lib/month/ics/feed.ts";
import { hashToken } from "#server/auth/device.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { PaceLimit, type PaceRules } from "#server/limits/pace-limit.ts";
import { mayStill } from "#server/people/made-links.ts";
import { calendarMonths } from "./calendar-months.ts";
import { feedReader } from "./live-month.ts";
import { type CalendarText, MadeCalendars } from "./made-calendars.ts";
import { FEED_UNKNOWN, tooManyReads } from "./refusals.ts";

/** Everybody who reads calendars from one place: a team of thirty with three programs each, at once, then one a second. Our own choice. */
export const NETWORK_PACE: PaceRules = { burst: 120, everyMs: 1000, keys: 10_000 };
/** One address in several programs: thirty at once, then one in ten seconds. Our own choice. */
export const FEED_PACE: PaceRules = { burst: 30, everyMs: 10_000, keys: 10_000 };
/** How exactly the last reading is noted. */
const NOTED_MS = 10 * 60_000;
/** A secret has 43 characters; what is longer is none, and is not hashed to its end. */
const MOST_SECRET = 64;

interface Reading {
  readonly networks: PaceLimit;
  readonly feeds: PaceLimit;
  readonly made: MadeCalendars;
}
const readings = new WeakMap<Db, Reading>();

/** One per database. */
function readingOf(db: Db): Reading {
  const made = { networks: new PaceLimit(NETWORK_PACE), feeds: new PaceLimit(FEED_PACE), made: new MadeCalendars() };
  const reading = readings.get(db) ?? made;
  readings.set(db, reading);
  return reading;
}

/**
 * `network` is where the request comes from; null for no limit, where networks cannot be told apart. An unknown secret, one that
 * was withdrawn and one whose owner has left are the same work: one hash, one look-up. Errors: 404 calendar-unknown, 429
 * too-often, 409 and 503 when a month cannot be read just now.
 */
export function readFeed(app: Springline, secret: string, network: string | null): Result<CalendarText> {
  const now = app.now();
  const { networks, feeds } = readingOf(app.db);
  const crowded = network === null ? 0 : networks.take(network, now);
  if (crowded > 0) return tooManyReads(crowded);
  const feed = feedBySecret(app.db, hashToken(secret.slice(0, MOST_SECRET)));
  if (!feed || !mayStillRead(app, feed)) return FEED_UNKNOWN;
  const early = feeds.take(feed.id, now);
  if (early > 0) return tooManyReads(early);
  const calendar = calendarText(app, feed);
  if (calendar.ok) noteReading(app, feed, now);
  return calendar;
}

/** Withdrawn with the right already; asked again, as of every link that somebody made. */
const mayStillRead = (app: Springline, { kind, subject, madeBy }: FeedRow): boolean =>
  kind === "coach" ? mayStill(app.db, subject, "feed.own") : mayStill(app.db, madeBy, "feeds.manage");

/** Most readings find what the last one made: nothing changed. */
function calendarText(app: Springline, feed: FeedRow): Result<CalendarText> {
  const { made } = readingOf(app.db);
  const kept = made.of(feed.id);
  const months = calendarMonths(app, feedReader(app, feed));
  if (!months.ok) return months;
  const { mark, since, promised } = months.value;
  return ok(
    kept.get([mark], () => {
      const text = joinedCalendarOf(promised(), partOf(feed), since);
      return { text, tag: sha256Hex(text).slice(0, 32) };
    }),
  );
}

function partOf({ kind, subject }: FeedRow): CalendarOf {
  if (kind === "coach") return { coach: subject };
  return kind === "room" ? { room: subject } : {};
}

/** Never gets in the way of the calendar: a disk that is full or damaged leaves the time of the last reading as it is. */
function noteReading(app: Springline, { id, lastReadAt }: FeedRow, now: number): void {
  if (app.db.damage.known !== null || (lastReadAt ?? 0) > now - NOTED_MS) return;
  try {
    setFeedRead(app.db, id, now, now - NOTED_MS);
  } catch (err) {
    app.log.warn({ err }, "the reading of a calendar could not be noted");
  }
}
