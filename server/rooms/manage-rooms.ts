/** The studio's rooms and their machines: list, add, edit. */
import * as z from "zod";
import { addToRecord } from "#db/repos/record-repo.ts";
import { listStudioRooms as allRooms, insertRoom, readRoom, type StudioRoom, updateRoom } from "#db/repos/room-repo.ts";
import { addStudioEvent } from "#db/repos/studio-event-repo.ts";
import { canonicalJson } from "#lib/canonical/canonical.ts";
import { type Equipment, equipmentSchema, type Spring } from "#lib/plan/schema.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { NO_RIGHT, NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import { typedLine } from "#server/base/typed-text.ts";
import type { Springline } from "#server/context/springline.ts";
import { announceStudio } from "#server/news/studio-news.ts";
import { announceToMonths } from "#server/programme/announce-to-months.ts";
import { MACHINES_CHANGED, roomNameTaken } from "./refusals.ts";

const roomName = typedLine.min(1, "Enter a name for the room.").max(80, "A room's name has at most 80 characters.");
const machines = equipmentSchema.check(
  z.refine((equipment) => new Set(equipment.springs.map((spring) => spring.id)).size === equipment.springs.length, {
    path: ["springs"],
    message: "Two springs have the same id. Give each its own.",
  }),
);
export const newRoomSchema = z.strictObject({ name: roomName, equipment: machines });
export const roomChangeSchema = z
  .strictObject({
    name: roomName.optional(),
    equipment: z.optional(machines),
    /** The machines before the change, so that another manager's change is not overwritten unseen. */
    seen: z.optional(equipmentSchema),
  })
  .refine(({ equipment, seen }) => equipment === undefined || seen !== undefined, {
    path: ["seen"],
    message: "Give the machines as they were before the change.",
  });

/** For everybody in the studio, since plans, slots and devices name rooms. Errors: 403 no-right. */
export function listRooms(app: Springline, actor: Actor): Result<readonly StudioRoom[]> {
  const member = actor?.kind === "person" && actor.roles.length > 0;
  return member ? ok(allRooms(app.db)) : NO_RIGHT;
}

/** Errors: 403 no-right, 409 name-taken. */
export function addRoom(app: Springline, actor: Actor, made: z.infer<typeof newRoomSchema>): Result<StudioRoom> {
  if (!can(actor, "rooms.manage") || actor?.kind !== "person") return NO_RIGHT;
  const room = { id: app.newId(), ...made };
  const added = write(app, room, () => {
    insertRoom(app.db, room);
    const entry = { at: app.now(), actorId: actor.id, subject: `room/${room.id}`, kind: "room-added" };
    addToRecord(app.db, { ...entry, body: made });
  });
  if (added.ok) announceToMonths(app);
  return added;
}

/**
 * Plans of the room are checked against the new machines from now on; editions do not change. Errors: 403, 404, 409
 * name-taken and 409 changed-meanwhile.
 */
export function changeRoom(
  app: Springline,
  actor: Actor,
  id: string,
  change: z.infer<typeof roomChangeSchema>,
): Result<StudioRoom> {
  if (actor?.kind !== "person" || !can(actor, "rooms.manage")) return NO_RIGHT;
  const now = readRoom(app.db, id);
  if (!now) return NOT_FOUND;
  if (change.seen && canonicalJson(change.seen) !== canonicalJson(now.equipment)) return MACHINES_CHANGED;
  const equipment = change.equipment ?? now.equipment;
  const room = { ...now, name: change.name ?? now.name, equipment, ...readingsOf(now, equipment) };
  const changed = write(app, room, () => {
    updateRoom(app.db, room);
    const event = { at: app.now(), actorId: actor.id, subject: id };
    addStudioEvent(app.db, { ...event, kind: "machines", data: { name: room.name, equipment } });
    // Recorded, so that plans that use the spring still know its values.
    for (const spring of missingSprings(now.equipment, equipment)) {
      addStudioEvent(app.db, { ...event, kind: "spring-out", data: spring });
    }
  });
  if (changed.ok) {
    announceStudio(app);
    announceToMonths(app);
  }
  return changed;
}

const missingSprings = (before: Equipment, after: Equipment): Spring[] =>
  before.springs.filter(({ id }) => !after.springs.some((spring) => spring.id === id));

/** Readings of removed springs are dropped. */
function readingsOf(room: StudioRoom, { springs }: Equipment): Pick<StudioRoom, "readings"> {
  if (!room.readings) return {};
  const there = Object.entries(room.readings).filter(([id]) => springs.some((spring) => spring.id === id));
  return { readings: Object.fromEntries(there) };
}

function write(app: Springline, room: StudioRoom, change: () => void): Result<StudioRoom> {
  return app.db.raw
    .transaction((): Result<StudioRoom> => {
      const sameName = (other: StudioRoom) =>
        other.id !== room.id && other.name.toLowerCase() === room.name.toLowerCase();
      if (allRooms(app.db).some(sameName)) {
        return roomNameTaken(room.name);
      }
      change();
      return ok(room);
    })
    .immediate();
}
