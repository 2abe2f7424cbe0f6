/** Findings that a lead accepted with a reason. A row is added and ended once, never removed. */
import { and, asc, eq, isNull } from "drizzle-orm";
import { userTable } from "#db/auth-schema.ts";
import type { Db } from "#db/connection.ts";
import { acceptanceTable } from "#db/review-schema.ts";
import type { AcceptanceView } from "#lib/protocol/messages.ts";
import { FORMER_MEMBER } from "./people-repo.ts";
import { addSourceToRecord } from "./record-repo.ts";

export type AcceptanceRow = typeof acceptanceTable.$inferSelect;
export type NewAcceptance = Omit<AcceptanceRow, "endedBy" | "endedAt">;

/** Call inside a transaction. */
export function insertAcceptance(db: Db, made: NewAcceptance): void {
  db.orm.insert(acceptanceTable).values(made).run();
  addSourceToRecord(db, "acceptance", made);
}

export const readAcceptance = (db: Db, id: string): AcceptanceRow | undefined =>
  db.orm.select().from(acceptanceTable).where(eq(acceptanceTable.id, id)).get();

/** Those of a plan that nobody has ended, the oldest first. */
export function listAcceptances(db: Db, planId: string): AcceptanceView[] {
  const rows = db.orm
    .select({ row: acceptanceTable, byName: userTable.name })
    .from(acceptanceTable)
    .leftJoin(userTable, eq(userTable.id, acceptanceTable.byId))
    .where(and(eq(acceptanceTable.planId, planId), isNull(acceptanceTable.endedAt)))
    .orderBy(asc(acceptanceTable.at), asc(acceptanceTable.id))
    .all();
  return rows.map(({ row: { id, ruleId, findingKey, message, reason, at }, byName }) => ({
    ...{ id, rule: ruleId, findingKey, message, reason, at },
    byName: byName ?? FORMER_MEMBER,
  }));
}

export function endAcceptance(db: Db, id: string, by: { readonly userId: string; readonly at: number }): void {
  db.orm.update(acceptanceTable).set({ endedBy: by.userId, endedAt: by.at }).where(eq(acceptanceTable.id, id)).run();
}
