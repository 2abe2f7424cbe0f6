/** What every move of the library has to satisfy: the schema, and a name that no other move has. */
import type { Db } from "#db/connection.ts";
import { readMove } from "#lib/library/faults.ts";
import type { Move } from "#lib/plan/schema.ts";
import { ok, type Result } from "#server/base/result.ts";
import { moveLibrary } from "#server/studio-data/move-library.ts";
import { badMove, moveNameTaken } from "./refusals.ts";

/**
 * `id` is the move's own, null for a new one. An unchanged name is always accepted. Errors, with `details.faults` (place and
 * sentence of each): 422 bad-move, 409 name-taken.
 */
export function checkMove(db: Db, value: unknown, id: string | null): Result<Move> {
  const read = readMove(value);
  if (!read.ok) return badMove(read.faults);
  const own = moveLibrary(db).rows.find((row) => row.id === id);
  return own?.move.name === read.move.name ? ok(read.move) : freeName(db, read.move, id);
}

/** Errors: 409 name-taken. The names of archived moves are free. */
export function freeName(db: Db, move: Move, id: string | null): Result<Move> {
  const plain = plainName(move.name);
  const other = moveLibrary(db).rows.find(
    (row) => row.id !== id && row.archivedAt === null && plainName(row.move.name) === plain,
  );
  return other ? moveNameTaken(other.move.name) : ok(move);
}

const plainName = (name: string): string => name.trim().toLowerCase().replace(/\s+/g, " ");
