/** Notices: what each person is told. Callers provide the transaction. */
import { and, asc, count, desc, eq, gte, inArray, isNull, lt, lte, sql } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { noticeTable } from "#db/review-schema.ts";
import { isNoticeKind, type NoticeData, type NoticeKind } from "#lib/notices/kinds.ts";

export interface NewNotice {
  readonly userId: string;
  /** ms since the epoch. */
  readonly at: number;
  readonly kind: NoticeKind;
  readonly planId: string | null;
  readonly data: NoticeData;
}

export interface NoticeRow extends NewNotice {
  readonly id: number;
  /** ms since the epoch, as is `mailedAt`; null before. */
  readonly seenAt: number | null;
  /** When it was put into a mail. */
  readonly mailedAt: number | null;
}

export function insertNotice(db: Db, { data, ...notice }: NewNotice): void {
  db.orm
    .insert(noticeTable)
    .values({ ...notice, dataJson: JSON.stringify(data) })
    .run();
}

/** At most `limit` notices of a person with ids below `before`, the newest first. */
export function listNoticeRows(db: Db, userId: string, before: number, limit: number): NoticeRow[] {
  const of = and(eq(noticeTable.userId, userId), lt(noticeTable.id, before));
  return toRows(db.orm.select().from(noticeTable).where(of).orderBy(desc(noticeTable.id)).limit(limit).all());
}

export interface UnseenCount {
  readonly kind: NoticeKind;
  readonly planId: string | null;
  readonly count: number;
}

/** How many notices a person has not seen, by kind and plan. */
export function countUnseenNotices(db: Db, userId: string): UnseenCount[] {
  const { kind, planId } = noticeTable;
  const rows = db.orm.select({ kind, planId, count: count() }).from(noticeTable).where(unseenOf(userId));
  return rows
    .groupBy(kind, planId)
    .all()
    .flatMap((row) => (isNoticeKind(row.kind) ? [{ ...row, kind: row.kind }] : []));
}

export interface SeenWhere {
  readonly planId?: string;
  readonly kinds?: readonly NoticeKind[];
  /** Of notices about a month, those about this one. */
  readonly month?: string;
  /** Notices up to this id; a later one has not been in front of anybody. */
  readonly upTo?: number;
}

/** Marks a person's notices as seen at `at`, those that `where` names or all. */
export function setNoticesSeen(db: Db, userId: string, at: number, where: SeenWhere = {}): void {
  const { planId, kinds, month, upTo } = where;
  const of = and(
    unseenOf(userId),
    lte(noticeTable.at, at),
    planId === undefined ? undefined : eq(noticeTable.planId, planId),
    kinds === undefined ? undefined : inArray(noticeTable.kind, [...kinds]),
    month === undefined ? undefined : eq(sql`json_extract(${noticeTable.dataJson}, '$.month')`, month),
    upTo === undefined ? undefined : lte(noticeTable.id, upTo),
  );
  db.orm.update(noticeTable).set({ seenAt: at }).where(of).run();
}

/** A person's notices since `since` that they have not seen and that are in no mail yet, the oldest first. */
export function listUnmailedNotices(db: Db, userId: string, since: number): NoticeRow[] {
  const of = and(unseenOf(userId), isNull(noticeTable.mailedAt), gte(noticeTable.at, since));
  return toRows(db.orm.select().from(noticeTable).where(of).orderBy(asc(noticeTable.id)).all());
}

/** Those of these ids that are still there, the oldest first. */
export function readNoticeRows(db: Db, ids: readonly number[]): NoticeRow[] {
  const of = inArray(noticeTable.id, [...ids]);
  return toRows(db.orm.select().from(noticeTable).where(of).orderBy(asc(noticeTable.id)).all());
}

/** Of notices that another one tells of: see `listUnmailedNotices`. */
export function deleteNotices(db: Db, ids: readonly number[]): void {
  if (ids.length > 0)
    db.orm
      .delete(noticeTable)
      .where(inArray(noticeTable.id, [...ids]))
      .run();
}

export function setNoticesMailed(db: Db, ids: readonly number[], at: number): void {
  db.orm
    .update(noticeTable)
    .set({ mailedAt: at })
    .where(inArray(noticeTable.id, [...ids]))
    .run();
}

const unseenOf = (userId: string) => and(eq(noticeTable.userId, userId), sql`${noticeTable.seenAt} is null`);

/** Notices of a kind that this program does not know, as after going back to an older one, are left out. */
const toRows = (rows: (typeof noticeTable.$inferSelect)[]): NoticeRow[] =>
  rows.flatMap(({ dataJson, kind, ...row }) =>
    isNoticeKind(kind) ? [{ ...row, kind, data: JSON.parse(dataJson) as NoticeData }] : [],
  );
