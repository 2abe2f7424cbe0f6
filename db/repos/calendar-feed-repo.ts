/** Secret addresses at which calendars are read. Secrets are passed in as hashes; a row is withdrawn, never deleted. */
import { and, asc, eq, isNull, lt, ne, or } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { calendarFeedTable } from "#db/month-schema.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";

export type FeedKind = "studio" | "coach" | "room";

/** What is read at an address. */
export interface FeedSubject {
  readonly kind: FeedKind;
  /** Id of the coach or the room; "" for the studio's. */
  readonly subject: string;
}

/** A feed without anything secret about it. Times are ms since the epoch. */
export interface FeedRow extends FeedSubject {
  readonly id: string;
  readonly madeBy: string;
  readonly madeAt: number;
  readonly lastReadAt: number | null;
}

export interface NewFeed extends Omit<FeedRow, "lastReadAt"> {
  readonly secretHash: string;
}

const { id, kind, subject, madeBy, madeAt, lastReadAt } = calendarFeedTable;
const shown = { id, kind, subject, madeBy, madeAt, lastReadAt };
const standing = isNull(calendarFeedTable.withdrawnAt);

export function insertFeed(db: Db, made: NewFeed): void {
  db.orm.insert(calendarFeedTable).values(made).run();
}

/** Every feed that was not withdrawn, the oldest first. */
export const listFeedRows = (db: Db): FeedRow[] =>
  db.orm.select(shown).from(calendarFeedTable).where(standing).orderBy(asc(madeAt), asc(id)).all();

export const readFeedRow = (db: Db, feedId: string): FeedRow | undefined =>
  db.orm
    .select(shown)
    .from(calendarFeedTable)
    .where(and(eq(id, feedId), standing))
    .get();

export const feedOf = (db: Db, of: FeedSubject): FeedRow | undefined =>
  db.orm
    .select(shown)
    .from(calendarFeedTable)
    .where(and(eq(kind, of.kind), eq(subject, of.subject), standing))
    .get();

const bySecret = oncePerDatabase((db) =>
  db.raw.prepare<[string], FeedRow>(
    `SELECT id, kind, subject, made_by AS madeBy, made_at AS madeAt, last_read_at AS lastReadAt
      FROM calendar_feed WHERE secret_hash = ? AND withdrawn_at IS NULL`,
  ),
);

/** The feed with this hash of a secret; undefined for none and for one that was withdrawn. Cheap, since anybody may guess. */
export const feedBySecret = (db: Db, secretHash: string): FeedRow | undefined => bySecret(db).get(secretHash);

/** False when there is no such feed any more. */
export function withdrawFeedRow(
  db: Db,
  feedId: string,
  by: { readonly actorId: string; readonly at: number },
): boolean {
  const set = { withdrawnBy: by.actorId, withdrawnAt: by.at };
  return (
    db.orm
      .update(calendarFeedTable)
      .set(set)
      .where(and(eq(id, feedId), standing))
      .run().changes > 0
  );
}

/** Notes a reading at `at`, unless one after `since` is noted already: a calendar is read far more often than that matters. */
export function setFeedRead(db: Db, feedId: string, at: number, since: number): void {
  const stale = or(isNull(lastReadAt), lt(lastReadAt, since));
  db.orm
    .update(calendarFeedTable)
    .set({ lastReadAt: at })
    .where(and(eq(id, feedId), stale))
    .run();
}

/** Withdraws what `of` names: a coach's own feed, and those of the studio and its rooms that somebody made. Returns how many. */
export function withdrawFeedsAfter(
  db: Db,
  of: { readonly coach?: string; readonly madeBy?: string },
  by: { readonly actorId: string; readonly at: number },
): number {
  const own = of.coach === undefined ? undefined : and(eq(kind, "coach"), eq(subject, of.coach));
  const made = of.madeBy === undefined ? undefined : and(ne(kind, "coach"), eq(madeBy, of.madeBy));
  const which = or(own, made);
  if (which === undefined) return 0;
  const set = { withdrawnBy: by.actorId, withdrawnAt: by.at };
  return db.orm.update(calendarFeedTable).set(set).where(and(standing, which)).run().changes;
}
