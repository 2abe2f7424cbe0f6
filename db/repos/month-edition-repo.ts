/** Months as they were signed off. Written once; the database itself refuses to change them. */
import { desc, eq } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { monthEditionTable } from "#db/month-schema.ts";

export interface SignedMonth {
  /** 1, 2, ... in a month. */
  readonly number: number;
  /** Canonical JSON of the month's file. */
  readonly fileJson: string;
}

/** The newest edition of a month ('YYYY-MM'); undefined while none was signed. */
export const newestSignedMonth = (db: Db, month: string): SignedMonth | undefined =>
  db.orm
    .select({ number: monthEditionTable.number, fileJson: monthEditionTable.fileJson })
    .from(monthEditionTable)
    .where(eq(monthEditionTable.month, month))
    .orderBy(desc(monthEditionTable.number))
    .limit(1)
    .get();
