/** Signed months. Written once; the database itself refuses anything else. */
import { and, asc, desc, eq } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { monthEditionTable } from "#db/month-schema.ts";
import { addSourceToRecord } from "./record-repo.ts";

export type MonthEditionRow = typeof monthEditionTable.$inferSelect;

/** Call inside a transaction. */
export function insertMonthEdition(db: Db, made: MonthEditionRow): void {
  db.orm.insert(monthEditionTable).values(made).run();
  addSourceToRecord(db, "month edition", made);
}

/** The last one that was signed; undefined for a month that never was. */
export const newestMonthEdition = (db: Db, month: string): MonthEditionRow | undefined =>
  db.orm
    .select()
    .from(monthEditionTable)
    .where(eq(monthEditionTable.month, month))
    .orderBy(desc(monthEditionTable.number))
    .limit(1)
    .get();

export const readMonthEdition = (db: Db, month: string, number: number): MonthEditionRow | undefined =>
  db.orm
    .select()
    .from(monthEditionTable)
    .where(and(eq(monthEditionTable.month, month), eq(monthEditionTable.number, number)))
    .get();

/** In the order of signing. */
export const listMonthEditions = (db: Db, month: string): MonthEditionRow[] =>
  db.orm
    .select()
    .from(monthEditionTable)
    .where(eq(monthEditionTable.month, month))
    .orderBy(asc(monthEditionTable.number))
    .all();
