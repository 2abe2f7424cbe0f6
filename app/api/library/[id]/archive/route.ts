/** Takes a move out of the library, or puts it back. */
import { guarded, needs } from "#server/http/respond.ts";
import { archiveMove, moveArchiveSchema } from "#server/library/archive-move.ts";

export const POST = guarded(
  { body: moveArchiveSchema, first: needs("library.write") },
  ({ app, actor, params, body }) => archiveMove(app, actor, params.id ?? "", body),
);
