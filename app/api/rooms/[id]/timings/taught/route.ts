/** A room's seconds as its classes tell them, taken. */
import { guarded, needs } from "#server/http/respond.ts";
import { takeTimings, takeTimingsSchema } from "#server/rooms/taught-timings.ts";

export const POST = guarded({ body: takeTimingsSchema, first: needs("rooms.manage") }, ({ app, actor, params, body }) =>
  takeTimings(app, actor, params.id ?? "", body),
);
