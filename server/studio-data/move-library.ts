/** The library of moves as data, parsed once per change. */
import type { Db } from "#db/connection.ts";
import { libraryState, listMoveRows, type MoveRow } from "#db/repos/move-repo.ts";
import type { Move } from "#lib/plan/schema.ts";

export type Moves = Readonly<Record<string, Move>>;

export interface MoveLibrary {
  /** All moves in order of id, archived ones too, since plans still use them. */
  readonly rows: readonly MoveRow[];
  readonly moves: Moves;
  /** Ids of the archived moves, which are not offered. */
  readonly archived: readonly string[];
}

interface Kept extends MoveLibrary {
  readonly at: number;
  readonly count: number;
}
const kept = new WeakMap<Db, Kept>();

/** The same object until the library changes. Do not modify it. */
export function moveLibrary(db: Db): MoveLibrary {
  const state = libraryState(db);
  const have = kept.get(db);
  if (have && have.at === state.at && have.count === state.count) return have;
  const rows = listMoveRows(db);
  const moves = Object.fromEntries(rows.map((row) => [row.id, row.move]));
  const archived = rows.filter((row) => row.archivedAt !== null).map((row) => row.id);
  const made = { ...state, rows, moves, archived };
  kept.set(db, made);
  return made;
}
