/** Stores changes of the library: in one transaction, each with a line in the record, and announced to open plans. */
import {
  addMoveEvent,
  libraryState,
  listMoveEvents,
  type MoveEventKind,
  putMove,
  readMoveRow,
} from "#db/repos/move-repo.ts";
import type { Move } from "#lib/plan/schema.ts";
import type { Person } from "#lib/policy/can.ts";
import type { Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { announceStudio } from "#server/news/studio-news.ts";

/**
 * Runs `change` as one write transaction, so that nothing it reads can change before it writes. If the library has changed,
 * every open plan page is told that its studio data have.
 */
export function changeLibrary<T>(app: Springline, change: () => Result<T>): Result<T> {
  const before = libraryState(app.db).at;
  const done = app.db.raw.transaction(change).immediate();
  if (libraryState(app.db).at !== before) announceStudio(app);
  return done;
}

/** Later than every earlier change, even within one millisecond: the time of a change identifies the resulting state. */
export const nextChangeAt = (app: Pick<Springline, "db" | "now">): number =>
  Math.max(app.now(), libraryState(app.db).at + 1);

interface Stored {
  readonly id: string;
  readonly move: Move;
  readonly kind: MoveEventKind;
}

/** The actor in the record for moves that came with the studio's first library. */
export const NOBODY = "";

/** Only inside `changeLibrary`. Returns the time of the change. */
export function storeMove(app: Springline, actor: Person, { id, move, kind }: Stored): number {
  const at = nextChangeAt(app);
  record(app, actor, { id, move, kind }, at);
  putMove(app.db, id, move, at);
  return at;
}

/** Call before the change itself: if the move has no record yet, its state before the change is recorded first. */
export function record(app: Springline, actor: Person, { id, move, kind }: Stored, at: number): void {
  const row = readMoveRow(app.db, id);
  if (row && listMoveEvents(app.db, id).length === 0) {
    addMoveEvent(app.db, { moveId: id, at: row.updatedAt, actorId: NOBODY, kind: "added", move: row.move });
  }
  addMoveEvent(app.db, { moveId: id, at, actorId: actor.id, kind, move });
}
