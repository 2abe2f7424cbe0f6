/** How a change of the library is stored: in one transaction, each with its line in the record, and told to open plans. */
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
 * Runs `change` as one write transaction: what it looks at cannot change before it has written. When it changed
 * something every open plan page hears that its studio is another one.
 */
export function changeLibrary<T>(app: Springline, change: () => Result<T>): Result<T> {
  const before = libraryState(app.db).at;
  const done = app.db.raw.transaction(change).immediate();
  if (libraryState(app.db).at !== before) announceStudio(app);
  return done;
}

/** Later than every change before, even within one millisecond: the time of a change names the state it made. */
export const nextChangeAt = (app: Pick<Springline, "db" | "now">): number =>
  Math.max(app.now(), libraryState(app.db).at + 1);

interface Stored {
  readonly id: string;
  readonly move: Move;
  readonly kind: MoveEventKind;
}

/** The actor of a line about a move that nobody here wrote: it came with the studio's first library. */
export const NOBODY = "";

/** Inside `changeLibrary` only. Gives the change's time. */
export function storeMove(app: Springline, actor: Person, { id, move, kind }: Stored): number {
  const at = nextChangeAt(app);
  record(app, actor, { id, move, kind }, at);
  putMove(app.db, id, move, at);
  return at;
}

/** Call before the change itself: a move that has no record yet has what it was recorded first. */
export function record(app: Springline, actor: Person, { id, move, kind }: Stored, at: number): void {
  const row = readMoveRow(app.db, id);
  if (row && listMoveEvents(app.db, id).length === 0) {
    addMoveEvent(app.db, { moveId: id, at: row.updatedAt, actorId: NOBODY, kind: "added", move: row.move });
  }
  addMoveEvent(app.db, { moveId: id, at, actorId: actor.id, kind, move });
}
