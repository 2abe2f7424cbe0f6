import { guarded, needs } from "#server/http/respond.ts";
import { changeRoom, roomChangeSchema } from "#server/rooms/manage-rooms.ts";

export const PATCH = guarded({ body: roomChangeSchema, first: needs("rooms.manage") }, ({ app, actor, params, body }) =>
  changeRoom(app, actor, params.id ?? "", body),
);
