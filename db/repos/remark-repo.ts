/** The studio's stock remarks. Taken out of use, never deleted. */
import { asc, eq } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { remarkTable } from "#db/review-schema.ts";

export type RemarkRow = typeof remarkTable.$inferSelect;

/** All of them, those out of use too, by their words. */
export const listRemarkRows = (db: Db): RemarkRow[] =>
  db.orm.select().from(remarkTable).orderBy(asc(remarkTable.words), asc(remarkTable.id)).all();

export const readRemark = (db: Db, id: string): RemarkRow | undefined =>
  db.orm.select().from(remarkTable).where(eq(remarkTable.id, id)).get();

export function insertRemark(db: Db, made: RemarkRow): void {
  db.orm.insert(remarkTable).values(made).run();
}

export function updateRemark(db: Db, id: string, now: Partial<Omit<RemarkRow, "id" | "createdBy">>): void {
  db.orm.update(remarkTable).set(now).where(eq(remarkTable.id, id)).run();
}
