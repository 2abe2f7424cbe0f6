/** Keeps what a luggage scale showed at one spring of a room and, when asked, takes the line through it. For managers. */
import { z } from "zod";
import { readRoom, type StudioRoom, updateRoom } from "#db/repos/room-repo.ts";
import { addStudioEvent } from "#db/repos/studio-event-repo.ts";
import type { Spring } from "#lib/plan/schema.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { countedReadings, type ReadingSheet, roundedSpring, sheetSchema } from "#lib/springs/readings.ts";
import { fitForRoom } from "#lib/springs/spring-fit.ts";
import { fail, NO_RIGHT, NOT_FOUND, ok, type Result } from "#server/result.ts";
import type { Springline } from "#server/springline.ts";
import { announceStudio } from "#server/studio/announce-studio.ts";

export const keepReadingsSchema = z.strictObject({
  sheet: sheetSchema,
  /** Set the spring's stiffness and preload to the line through the readings that count. */
  use: z.boolean(),
});
export type KeepReadings = z.infer<typeof keepReadingsSchema>;

/**
 * The line is fitted here, from the readings alone: a page's own numbers are never taken for it. With `use`, plans of
 * the room are checked against the spring from now on; editions keep theirs.
 * Errors: 403 no-right, 404 not-found (room or spring), 422 no-line (with the fit's own sentence).
 */
export function keepReadings(
  app: Springline,
  actor: Actor,
  at: { readonly roomId: string; readonly springId: string },
  { sheet, use }: KeepReadings,
): Result<StudioRoom> {
  if (actor?.kind !== "person" || !can(actor, "rooms.manage")) return NO_RIGHT;
  const kept = app.db.raw
    .transaction((): Result<StudioRoom> => {
      const room = readRoom(app.db, at.roomId);
      const spring = room?.equipment.springs.find((s) => s.id === at.springId);
      if (!room || !spring) return NOT_FOUND;
      const fitted = use ? fittedSpring(spring, sheet) : ok(spring);
      if (!fitted.ok) return fitted;
      const readings = { ...room.readings, [spring.id]: { ...sheet, at: app.now() } };
      const springs = room.equipment.springs.map((s) => (s.id === spring.id ? fitted.value : s));
      const changed = { ...room, equipment: { ...room.equipment, springs }, readings };
      updateRoom(app.db, changed);
      const data = { spring: fitted.value, readings: sheet.readings.length, use };
      addStudioEvent(app.db, { at: app.now(), actorId: actor.id, kind: "spring", subject: room.id, data });
      return ok(changed);
    })
    .immediate();
  if (kept.ok && use) announceStudio(app);
  return kept;
}

function fittedSpring(spring: Spring, sheet: ReadingSheet): Result<Spring> {
  const fit = fitForRoom(countedReadings(sheet.readings).readings);
  return fit.ok ? ok({ ...spring, ...roundedSpring(fit) }) : fail(422, "no-line", fit.say);
}
