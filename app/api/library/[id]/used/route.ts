/** Where a move is used. */
import { guarded } from "#server/http/respond.ts";
import { whereUsed } from "#server/library/where-used.ts";

export const GET = guarded({}, ({ app, actor, params }) => whereUsed(app, actor, params.id ?? ""));
