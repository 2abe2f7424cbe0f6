import { guarded } from "#server/http/respond.ts";
import { putMoves, putMovesSchema, readLibrary } from "#server/library/library.ts";

export const GET = guarded({}, ({ app, actor }) => readLibrary(app, actor));
export const PUT = guarded({ body: putMovesSchema }, ({ app, actor, body }) => putMoves(app, actor, body.moves));
