/** The studio's library: all of it, a new move, several moves at once. */
import { guarded, needs } from "#server/http/respond.ts";
import { addToLibrary, newMoveSchema } from "#server/library/add-move.ts";
import { putMoves, putMovesSchema, readLibrary } from "#server/library/library.ts";

export const GET = guarded({}, ({ app, actor }) => readLibrary(app, actor));
export const POST = guarded(
  { body: newMoveSchema, first: needs("library.write"), status: 201 },
  ({ app, actor, body }) => addToLibrary(app, actor, body),
);
export const PUT = guarded(
  { body: putMovesSchema, large: true, first: needs("library.write") },
  ({ app, actor, body }) => putMoves(app, actor, body.moves, body.seen),
);
