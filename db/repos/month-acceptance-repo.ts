/** Findings of a month that a lead accepted with a reason. A row is added and ended once, never removed. */
import { and, asc, eq, isNull } from "drizzle-orm";
import { userTable } from "#db/auth-schema.ts";
import type { Db } from "#db/connection.ts";
import { monthAcceptanceTable } from "#db/month-schema.ts";
import type { AcceptanceView } from "#lib/protocol/messages.ts";
import { FORMER_MEMBER } from "./people-repo.ts";

export type MonthAcceptanceRow = typeof monthAcceptanceTable.$inferSelect;

export function insertMonthAcceptance(db: Db, made: Omit<MonthAcceptanceRow, "undoneBy" | "undoneAt">): void {
  db.orm.insert(monthAcceptanceTable).values(made).run();
}

export const readMonthAcceptance = (db: Db, id: string): MonthAcceptanceRow | undefined =>
  db.orm.select().from(monthAcceptanceTable).where(eq(monthAcceptanceTable.id, id)).get();

/** Those of a month that nobody has ended, the oldest first. */
export function listMonthAcceptances(db: Db, month: string): AcceptanceView[] {
  const table = monthAcceptanceTable;
  const rows = db.orm
    .select({ row: table, byName: userTable.name })
    .from(table)
    .leftJoin(userTable, eq(userTable.id, table.acceptedBy))
    .where(and(eq(table.month, month), isNull(table.undoneAt)))
    .orderBy(asc(table.acceptedAt), asc(table.id))
    .all();
  return rows.map(({ row: { id, rule, findingKey, message, reason, acceptedAt }, byName }) => ({
    ...{ id, rule, findingKey, message, reason, at: acceptedAt },
    byName: byName ?? FORMER_MEMBER,
  }));
}

export function endMonthAcceptance(db: Db, id: string, by: { readonly userId: string; readonly at: number }): void {
  const ended = { undoneBy: by.userId, undoneAt: by.at };
  db.orm.update(monthAcceptanceTable).set(ended).where(eq(monthAcceptanceTable.id, id)).run();
}
