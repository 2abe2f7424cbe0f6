/** The scale readings of one spring of a room. */
import { guarded, needs } from "#server/http/respond.ts";
import { keepReadings, keepReadingsSchema } from "#server/rooms/keep-readings.ts";

export const PUT = guarded({ body: keepReadingsSchema, first: needs("rooms.manage") }, ({ app, actor, params, body }) =>
  keepReadings(app, actor, { roomId: params.id ?? "", springId: params.spring ?? "" }, body),
);
