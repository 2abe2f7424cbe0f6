/** What a lead had read of a month when they opened its sign-off, so that it can be compared with what they sign. */
import { and, desc, eq, notInArray } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { monthReadingTable } from "#db/month-schema.ts";

export type MonthReadingRow = typeof monthReadingTable.$inferSelect;

/** Readings kept per lead and month. */
const KEPT = 5;

/** Call inside a transaction. */
export function putMonthReading(db: Db, reading: MonthReadingRow): void {
  const { month, userId, at } = reading;
  const table = monthReadingTable;
  const target = [table.month, table.userId, table.hash];
  db.orm.insert(table).values(reading).onConflictDoUpdate({ target, set: { at } }).run();
  const mine = and(eq(table.month, month), eq(table.userId, userId));
  const newest = db.orm.select({ hash: table.hash }).from(table).where(mine).orderBy(desc(table.at), desc(table.hash));
  const keep = newest
    .limit(KEPT)
    .all()
    .map(({ hash }) => hash);
  db.orm
    .delete(table)
    // This one too where others are of the same moment.
    .where(and(mine, notInArray(table.hash, [reading.hash, ...keep])))
    .run();
}

/** What this person read with this hash, if they did. */
export function readMonthReading(db: Db, month: string, userId: string, hash: string): MonthReadingRow | undefined {
  const { month: of, userId: by, hash: is } = monthReadingTable;
  const one = and(eq(of, month), eq(by, userId), eq(is, hash));
  return db.orm.select().from(monthReadingTable).where(one).get();
}

/** What this person read of the month last. */
export function lastMonthReading(db: Db, month: string, userId: string): MonthReadingRow | undefined {
  const { month: of, userId: by, at, hash } = monthReadingTable;
  const rows = db.orm
    .select()
    .from(monthReadingTable)
    .where(and(eq(of, month), eq(by, userId)));
  return rows.orderBy(desc(at), desc(hash)).limit(1).get();
}
