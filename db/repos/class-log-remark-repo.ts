/** What people add to class logs, which are themselves written once. Only added to; the newest of a kind counts. */
import { asc, eq } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { classLogRemarkTable } from "#db/month-schema.ts";
import { addSourceToRecord } from "./record-repo.ts";

export type ClassLogRemarkRow = typeof classLogRemarkTable.$inferSelect;

/** Call inside a transaction. */
export function insertClassLogRemark(db: Db, remark: Omit<ClassLogRemarkRow, "id">): void {
  addSourceToRecord(db, "class log remark", db.orm.insert(classLogRemarkTable).values(remark).returning().get());
}

/** The oldest first. */
export const listClassLogRemarks = (db: Db, sessionId: string): ClassLogRemarkRow[] =>
  db.orm
    .select()
    .from(classLogRemarkTable)
    .where(eq(classLogRemarkTable.sessionId, sessionId))
    .orderBy(asc(classLogRemarkTable.id))
    .all();
