/** A room's own seconds for the actions of a set-up change. */
import { guarded } from "#server/http/respond.ts";
import { keepTimings, keepTimingsSchema } from "#server/rooms/keep-timings.ts";

export const PUT = guarded({ body: keepTimingsSchema }, ({ app, actor, params, body }) =>
  keepTimings(app, actor, params.id ?? "", body),
);
