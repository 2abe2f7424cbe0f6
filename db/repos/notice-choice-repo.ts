/** How each person wants to be told. Somebody who has never chosen has no row. */
import { eq } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { noticeChoiceTable } from "#db/review-schema.ts";
import type { KindChoices } from "#lib/notices/kinds.ts";

export interface NoticeChoice {
  /** Local time of the daily digest, "07:30"; null for none. */
  readonly digestAt: string | null;
  readonly timeZone: string;
  readonly kinds: KindChoices;
}

export interface NoticeChoiceRow extends NoticeChoice {
  readonly userId: string;
  /** Up to when digests have been dealt with, ms since the epoch: the last one, or when the choice was made. */
  readonly digestSentAt: number;
}

export function readNoticeChoice(db: Db, userId: string): NoticeChoiceRow | undefined {
  const row = db.orm.select().from(noticeChoiceTable).where(eq(noticeChoiceTable.userId, userId)).get();
  return row && toChoice(row);
}

export const listNoticeChoices = (db: Db): NoticeChoiceRow[] =>
  db.orm.select().from(noticeChoiceTable).all().map(toChoice);

export function putNoticeChoice(db: Db, { kinds, ...choice }: NoticeChoiceRow): void {
  const row = { ...choice, kindsJson: JSON.stringify(kinds) };
  db.orm.insert(noticeChoiceTable).values(row).onConflictDoUpdate({ target: noticeChoiceTable.userId, set: row }).run();
}

export function setDigestSent(db: Db, userId: string, at: number): void {
  db.orm.update(noticeChoiceTable).set({ digestSentAt: at }).where(eq(noticeChoiceTable.userId, userId)).run();
}

const toChoice = ({ kindsJson, digestSentAt, ...row }: typeof noticeChoiceTable.$inferSelect): NoticeChoiceRow => ({
  ...row,
  kinds: JSON.parse(kindsJson) as KindChoices, // written by putNoticeChoice only
  digestSentAt: digestSentAt ?? 0,
});
