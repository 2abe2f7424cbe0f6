/** A room's own seconds for the actions of a set-up change. */
import { guarded, needs } from "#server/http/respond.ts";
import { keepTimings, keepTimingsSchema } from "#server/rooms/keep-timings.ts";

export const PUT = guarded({ body: keepTimingsSchema, first: needs("rooms.manage") }, ({ app, actor, params, body }) =>
  keepTimings(app, actor, params.id ?? "", body),
);
