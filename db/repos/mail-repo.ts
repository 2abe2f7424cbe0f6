/** Mails that wait to be sent, were sent, or could not be. Callers provide the transaction. */
import { and, asc, count, eq, isNotNull, isNull, lt, lte, max } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { mailTable } from "#db/review-schema.ts";

export interface MailRow {
  readonly id: string;
  readonly userId: string;
  /** Ids of the notices that it tells of. */
  readonly notices: readonly number[];
  /** ms since the epoch, as are all times here. */
  readonly madeAt: number;
  /** How often it was handed to the mail server, or was about to be. */
  readonly attempts: number;
  readonly nextAt: number;
  readonly sentAt: number | null;
  /** What the mail server said last. */
  readonly problem: string | null;
  readonly failedAt: number | null;
}

export type NewMail = Pick<MailRow, "id" | "userId" | "notices" | "madeAt" | "nextAt">;

export function insertMail(db: Db, { notices, ...mail }: NewMail): void {
  db.orm
    .insert(mailTable)
    .values({ ...mail, noticesJson: JSON.stringify(notices) })
    .run();
}

export function readMail(db: Db, id: string): MailRow | undefined {
  const row = db.orm.select().from(mailTable).where(eq(mailTable.id, id)).get();
  return row && toMail(row);
}

const waits = and(isNull(mailTable.sentAt), isNull(mailTable.failedAt));

/** What is to be sent at `now`, the longest due first. */
export function listDueMails(db: Db, now: number, limit: number): MailRow[] {
  const rows = db.orm
    .select()
    .from(mailTable)
    .where(and(waits, lte(mailTable.nextAt, now)));
  return rows.orderBy(asc(mailTable.nextAt), asc(mailTable.id)).limit(limit).all().map(toMail);
}

/** What waits and what failed, the oldest first. */
export function listUnsentMails(db: Db, limit: number): MailRow[] {
  const rows = db.orm.select().from(mailTable).where(isNull(mailTable.sentAt));
  return rows.orderBy(asc(mailTable.madeAt), asc(mailTable.id)).limit(limit).all().map(toMail);
}

export type MailChange = Partial<Pick<MailRow, "attempts" | "nextAt" | "sentAt" | "problem" | "failedAt">>;

export function setMail(db: Db, id: string, change: MailChange): void {
  db.orm.update(mailTable).set(change).where(eq(mailTable.id, id)).run();
}

export function deleteMail(db: Db, id: string): void {
  db.orm.delete(mailTable).where(eq(mailTable.id, id)).run();
}

/** Forgets mails that were sent before `before`. */
export function deleteSentMails(db: Db, before: number): void {
  db.orm.delete(mailTable).where(lt(mailTable.sentAt, before)).run();
}

export interface MailCounts {
  readonly waiting: number;
  readonly failed: number;
  /** When the last one was sent, ms since the epoch. */
  readonly lastSentAt: number | null;
}

export function countMails(db: Db): MailCounts {
  const of = (where: ReturnType<typeof and>) =>
    db.orm.select({ n: count() }).from(mailTable).where(where).get()?.n ?? 0;
  const last = db.orm
    .select({ at: max(mailTable.sentAt) })
    .from(mailTable)
    .get();
  return { waiting: of(waits), failed: of(isNotNull(mailTable.failedAt)), lastSentAt: last?.at ?? null };
}

const toMail = ({ noticesJson, ...row }: typeof mailTable.$inferSelect): MailRow => ({
  ...row,
  notices: JSON.parse(noticesJson) as number[], // written by insertMail only
});
