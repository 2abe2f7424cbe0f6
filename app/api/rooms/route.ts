import { guarded, needs } from "#server/http/respond.ts";
import { addRoom, listRooms, newRoomSchema } from "#server/rooms/manage-rooms.ts";

export const GET = guarded({}, ({ app, actor }) => listRooms(app, actor));
export const POST = guarded(
  { body: newRoomSchema, first: needs("rooms.manage"), status: 201 },
  ({ app, actor, body }) => addRoom(app, actor, body),
);
