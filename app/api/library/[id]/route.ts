/** One move: with its record, and changed from the state its editor began with. */
import { guarded, needs } from "#server/http/respond.ts";
import { changeInLibrary, moveChangeSchema } from "#server/library/change-move.ts";
import { readMoveDetail } from "#server/library/read-move.ts";

export const GET = guarded({}, ({ app, actor, params }) => readMoveDetail(app, actor, params.id ?? ""));
export const PUT = guarded({ body: moveChangeSchema, first: needs("library.write") }, ({ app, actor, params, body }) =>
  changeInLibrary(app, actor, params.id ?? "", body),
);
