/** The library as data: all moves of the studio, parsed once per change. */
import type { Db } from "#db/connection.ts";
import { libraryState, readMoves } from "#db/repos/move-repo.ts";
import type { Move } from "#lib/plan/schema.ts";

export type Moves = Readonly<Record<string, Move>>;

const kept = new WeakMap<Db, { readonly at: number; readonly count: number; readonly moves: Moves }>();

/** All moves by id, the same object until the library changes. Do not change what you get. */
export function libraryMoves(db: Db): Moves {
  const state = libraryState(db);
  const have = kept.get(db);
  if (have && have.at === state.at && have.count === state.count) return have.moves;
  const moves = readMoves(db);
  kept.set(db, { ...state, moves });
  return moves;
}
