/** The studio's own seconds for the actions of a change, for one room or for all. For managers. */
import * as z from "zod";
import { listStudioRooms, readRoom, type StudioRoom, updateRoom } from "#db/repos/room-repo.ts";
import { addStudioEvent } from "#db/repos/studio-event-repo.ts";
import { actionSecondsSchema, spreadShareSchema } from "#lib/plan/schema.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { NO_RIGHT, NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { announceStudio } from "#server/news/studio-news.ts";

export const keepTimingsSchema = z.strictObject({
  /** For actions left out, the program's own seconds apply. */
  actionSeconds: actionSecondsSchema,
  /** Left out: as it is in each room. Null: the program's own. */
  spreadShare: z.optional(z.nullable(spreadShareSchema)),
  everyRoom: z.boolean(),
});
export type KeepTimings = z.infer<typeof keepTimingsSchema>;

/** All rooms or none. Open plans are timed again; editions do not change. Errors: 403 no-right, 404 not-found. */
export function keepTimings(
  app: Springline,
  actor: Actor,
  roomId: string,
  given: KeepTimings,
): Result<{ readonly rooms: number }> {
  if (actor?.kind !== "person" || !can(actor, "rooms.manage")) return NO_RIGHT;
  const { actionSeconds, everyRoom } = given;
  const rooms = app.db.raw
    .transaction((): number => {
      const one = readRoom(app.db, roomId);
      if (!one) return 0;
      const changed = everyRoom ? listStudioRooms(app.db) : [one];
      for (const room of changed) {
        updateRoom(app.db, withTimings(room, given));
        const event = { at: app.now(), actorId: actor.id, subject: room.id, data: actionSeconds };
        addStudioEvent(app.db, { ...event, kind: "timings" });
      }
      return changed.length;
    })
    .immediate();
  if (rooms === 0) return NOT_FOUND;
  announceStudio(app);
  return ok({ rooms });
}

/** Without the key when all seconds are the program's own: a plan file only contains what differs. */
function withTimings(room: StudioRoom, { actionSeconds, spreadShare }: KeepTimings): StudioRoom {
  const { actionSeconds: _before, spreadShare: spreadBefore, ...equipment } = room.equipment;
  const own = Object.fromEntries(Object.entries(actionSeconds).filter(([, seconds]) => seconds !== undefined));
  const spread = spreadShare === undefined ? spreadBefore : (spreadShare ?? undefined);
  return {
    ...room,
    equipment: {
      ...equipment,
      ...(Object.keys(own).length === 0 ? {} : { actionSeconds: own }),
      ...(spread === undefined ? {} : { spreadShare: spread }),
    },
  };
}
