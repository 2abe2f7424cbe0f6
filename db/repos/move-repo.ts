/**
 * The studio's library of moves and its record. A move is added, changed, archived and restored, never deleted: the database
 * itself refuses that. Every function is synchronous; callers provide the transaction.
 */
import { asc, count, desc, eq, max } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";
import { moveEventTable, moveTable } from "#db/schema.ts";
import type { Move } from "#lib/plan/schema.ts";
import { addSourceToRecord } from "./record-repo.ts";

export interface MoveRow {
  readonly id: string;
  readonly move: Move;
  /** ms since the epoch; later than that of every earlier change of the library. */
  readonly updatedAt: number;
  /** Since when it is not offered for new items, ms since the epoch; null while it is offered. */
  readonly archivedAt: number | null;
}

export type MoveEventKind = "added" | "changed" | "archived" | "restored";

export interface MoveEvent {
  readonly moveId: string;
  /** ms since the epoch. */
  readonly at: number;
  readonly actorId: string;
  readonly kind: MoveEventKind;
  /** The move after the event. */
  readonly move: Move;
}

/** Every move, in order of id. */
export function listMoveRows(db: Db): MoveRow[] {
  return db.orm.select().from(moveTable).orderBy(asc(moveTable.id)).all().map(rowOf);
}

export function readMoveRow(db: Db, id: string): MoveRow | undefined {
  const row = db.orm.select().from(moveTable).where(eq(moveTable.id, id)).get();
  return row && rowOf(row);
}

/** Adds a move or replaces the one with this id; an archived move stays archived. */
export function putMove(db: Db, id: string, data: Move, at: number): void {
  const dataJson = JSON.stringify(data);
  db.orm
    .insert(moveTable)
    .values({ id, dataJson, updatedAt: at })
    .onConflictDoUpdate({ target: moveTable.id, set: { dataJson, updatedAt: at } })
    .run();
}

/** Null restores it. */
export function setMoveArchived(db: Db, id: string, archivedAt: number | null, at: number): void {
  db.orm.update(moveTable).set({ archivedAt, updatedAt: at }).where(eq(moveTable.id, id)).run();
}

const state = oncePerDatabase(({ orm }) =>
  orm
    .select({ at: max(moveTable.updatedAt), count: count() })
    .from(moveTable)
    .prepare(),
);

/** When the library last changed (ms since the epoch) and how many moves it has: together they identify its state. */
export function libraryState(db: Db): { readonly at: number; readonly count: number } {
  const row = state(db).get();
  return { at: row?.at ?? 0, count: row?.count ?? 0 };
}

/** Inside the caller's transaction. It stands in the chained record too. */
export function addMoveEvent(db: Db, event: MoveEvent): void {
  const { move: data, ...row } = event;
  const kept = { ...row, dataJson: JSON.stringify(data) };
  addSourceToRecord(db, "move event", db.orm.insert(moveEventTable).values(kept).returning().get());
}

/** The record of one move, the newest first. */
export function listMoveEvents(db: Db, moveId: string): MoveEvent[] {
  const rows = db.orm
    .select()
    .from(moveEventTable)
    .where(eq(moveEventTable.moveId, moveId))
    .orderBy(desc(moveEventTable.id))
    .all();
  return rows.map(({ at, actorId, kind, dataJson }) => ({
    moveId,
    at,
    actorId,
    kind: kind as MoveEventKind, // written by addMoveEvent only
    move: JSON.parse(dataJson) as Move,
  }));
}

export interface EditionUse {
  readonly planId: string;
  readonly number: number;
  /** As signed. */
  readonly title: string;
  /** ms since the epoch. */
  readonly signedAt: number;
}

/** Signed editions with an item of this move, the last signed first, without those of deleted plans. */
export function editionsUsing(db: Db, moveId: string): EditionUse[] {
  return db.raw
    .prepare<[string], EditionUse>(
      `SELECT e.plan_id AS planId, e.number, json_extract(e.plan_json, '$.title') AS title, e.signed_at AS signedAt
         FROM edition e JOIN plan p ON p.id = e.plan_id
        WHERE p.deleted_at IS NULL
          AND EXISTS (SELECT 1 FROM json_each(e.plan_json, '$.items') WHERE json_extract(value, '$.move') = ?)
        ORDER BY e.signed_at DESC, e.plan_id, e.number DESC`,
    )
    .all(moveId);
}

function rowOf(row: typeof moveTable.$inferSelect): MoveRow {
  const { id, dataJson, updatedAt, archivedAt } = row;
  return { id, move: JSON.parse(dataJson) as Move, updatedAt, archivedAt }; // checked when written
}
