/** The studio's library of moves. */
import { asc, count, max } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { move } from "#db/schema.ts";
import type { Move } from "#lib/plan/schema.ts";

/** Moves by id, in order of id. */
export function readMoves(db: Db): Record<string, Move> {
  const rows = db.orm.select().from(move).orderBy(asc(move.id)).all();
  return Object.fromEntries(rows.map((row) => [row.id, JSON.parse(row.dataJson) as Move])); // checked when written
}

/** Adds a move or replaces the one with this id. */
export function putMove(db: Db, id: string, data: Move, at: number): void {
  const dataJson = JSON.stringify(data);
  db.orm
    .insert(move)
    .values({ id, dataJson, updatedAt: at })
    .onConflictDoUpdate({ target: move.id, set: { dataJson, updatedAt: at } })
    .run();
}

/** When the library last changed (ms since the epoch), and how many moves it has: together they name its state. */
export function libraryState(db: Db): { readonly at: number; readonly count: number } {
  const row = db.orm
    .select({ at: max(move.updatedAt), count: count() })
    .from(move)
    .get();
  return { at: row?.at ?? 0, count: row?.count ?? 0 };
}
