/** Which months have a document. */
import { and, asc, eq, gte, like, max } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { monthEditionTable } from "#db/month-schema.ts";
import { documentTable } from "#db/schema.ts";

const PREFIX = "month/";

/** Months ('YYYY-MM') from `from` on that have a document, in order. */
export function listMonths(db: Db, from: string): string[] {
  const months = and(like(documentTable.name, `${PREFIX}%`), gte(documentTable.name, PREFIX + from));
  const rows = db.orm
    .select({ name: documentTable.name })
    .from(documentTable)
    .where(months)
    .orderBy(asc(documentTable.name))
    .all();
  return rows.map((row) => row.name.slice(PREFIX.length));
}

/** When the month was last signed off, ms since the epoch; null for never. */
export function monthSignedAt(db: Db, month: string): number | null {
  const at = max(monthEditionTable.signedAt);
  return db.orm.select({ at }).from(monthEditionTable).where(eq(monthEditionTable.month, month)).get()?.at ?? null;
}
