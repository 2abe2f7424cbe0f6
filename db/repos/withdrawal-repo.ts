/** Withdrawals of editions. Written once: the database itself refuses to change or delete one. */

import { and, count, desc, eq } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { editionWithdrawalTable } from "#db/schema.ts";
import { wellFormed } from "#lib/record/chain.ts";
import { addSourceToRecord } from "./record-repo.ts";

export interface WithdrawalRow {
  readonly planId: string;
  readonly number: number;
  readonly withdrawnBy: string;
  /** ms since the epoch. */
  readonly withdrawnAt: number;
  readonly reason: string;
}

/** Inside the caller's transaction. It stands in the chained record too. */
export function insertWithdrawal(db: Db, made: WithdrawalRow): void {
  const kept = { ...made, reason: wellFormed(made.reason) };
  addSourceToRecord(db, "withdrawal", db.orm.insert(editionWithdrawalTable).values(kept).returning().get());
}

export function readWithdrawal(db: Db, planId: string, number: number): WithdrawalRow | undefined {
  const one = and(eq(editionWithdrawalTable.planId, planId), eq(editionWithdrawalTable.number, number));
  return db.orm.select().from(editionWithdrawalTable).where(one).get();
}

/** The last that was withdrawn of this plan's editions. */
export const newestWithdrawal = (db: Db, planId: string): WithdrawalRow | undefined =>
  db.orm
    .select()
    .from(editionWithdrawalTable)
    .where(eq(editionWithdrawalTable.planId, planId))
    .orderBy(desc(editionWithdrawalTable.withdrawnAt))
    .limit(1)
    .get();

const COLUMNS = `w.plan_id AS planId, w.number AS number, w.withdrawn_by AS withdrawnBy,
  w.withdrawn_at AS withdrawnAt, w.reason AS reason`;

/** The withdrawals of newest editions, by plan. */
export function newestWithdrawals(db: Db): Map<string, WithdrawalRow> {
  const rows = db.raw
    .prepare<[], WithdrawalRow>(
      `SELECT ${COLUMNS} FROM edition_withdrawal w
        WHERE w.number = (SELECT max(number) FROM edition WHERE plan_id = w.plan_id)`,
    )
    .all();
  return new Map(rows.map((row) => [row.planId, row]));
}

/** Withdrawals of editions signed for this room, and of `plans`, which are scheduled here. Includes deleted plans. */
export function withdrawalsOfRoom(db: Db, roomId: string, plans: readonly string[]): WithdrawalRow[] {
  return db.raw
    .prepare<[string, string], WithdrawalRow>(
      `SELECT ${COLUMNS} FROM edition_withdrawal w JOIN edition e ON e.plan_id = w.plan_id AND e.number = w.number
        WHERE json_extract(e.card_json, '$.card.room.id') = ? OR w.plan_id IN (SELECT value FROM json_each(?))
        ORDER BY w.withdrawn_at`,
    )
    .all(roomId, JSON.stringify(plans));
}

/** The number of withdrawals; it only grows, so that a frequent reader notices a change. */
export const countWithdrawals = (db: Db): number =>
  db.orm.select({ n: count() }).from(editionWithdrawalTable).get()?.n ?? 0;
