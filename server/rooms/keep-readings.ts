/** Stores scale readings of one spring of a room and, if wanted, sets the spring to the line through them. For managers. */
import * as z from "zod";
import { readRoom, type StudioRoom, updateRoom } from "#db/repos/room-repo.ts";
import { addStudioEvent } from "#db/repos/studio-event-repo.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { sameData } from "#lib/plan/same-data.ts";
import type { Spring } from "#lib/plan/schema.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { countedReadings, type ReadingSheet, roundedSpring, sheetSchema } from "#lib/springs/readings.ts";
import { fitForRoom } from "#lib/springs/spring-fit.ts";
import { fail, NO_RIGHT, NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { personFormats } from "#server/formats/formats.ts";
import { announceStudio } from "#server/news/studio-news.ts";
import { SPRING_CHANGED } from "./refusals.ts";

const seenSchema = z.strictObject({
  /** When the readings were stored, ms since the epoch; null if there were none. */
  readingsAt: z.number().nullable(),
  stiffnessNPerMm: z.number(),
  preloadN: z.number(),
});
export type SeenSpring = z.infer<typeof seenSchema>;

export const keepReadingsSchema = z.strictObject({
  sheet: sheetSchema,
  /** Set the spring's stiffness and preload to the line through the readings that count. */
  use: z.boolean(),
  /** What the page showed when it was opened, so that another manager's change is not overwritten unseen. */
  seen: seenSchema,
});
export type KeepReadings = z.infer<typeof keepReadingsSchema>;

/**
 * The line is fitted here from the readings; numbers from the page are not used for it. With `use`, plans of the room are
 * checked against the new spring from now on; editions do not change.
 * Errors: 403 no-right, 404 not-found (room or spring), 409 changed-meanwhile, 422 no-line (with the fit's own sentence),
 * no-readings.
 */
export function keepReadings(
  app: Springline,
  actor: Actor,
  where: { readonly roomId: string; readonly springId: string },
  { sheet, use, seen }: KeepReadings,
): Result<StudioRoom> {
  if (actor?.kind !== "person" || !can(actor, "rooms.manage")) return NO_RIGHT;
  const kept = app.db.raw
    .transaction((): Result<StudioRoom> => {
      const room = readRoom(app.db, where.roomId);
      const spring = room?.equipment.springs.find((s) => s.id === where.springId);
      if (!room || !spring) return NOT_FOUND;
      if (sheet.readings.length === 0 && !room.readings?.[spring.id]?.readings.length) return NOTHING_TO_SAVE;
      if (!sameSpring(seen, spring, room.readings?.[spring.id]?.at ?? null)) return SPRING_CHANGED;
      const fitted = use ? fittedSpring(spring, sheet, personFormats(app, actor.id)) : ok(spring);
      if (!fitted.ok) return fitted;
      // Never the same twice: the next change is compared by it.
      const at = Math.max(app.now(), (room.readings?.[spring.id]?.at ?? 0) + 1);
      const readings = { ...room.readings, [spring.id]: { ...sheet, at } };
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

const NOTHING_TO_SAVE = fail(
  422,
  "no-readings",
  "There are no readings to save yet. Type or paste what the scale showed, a row for each place of the carriage.",
);

const sameSpring = (seen: SeenSpring, { stiffnessNPerMm, preloadN }: Spring, readingsAt: number | null): boolean =>
  sameData(seen, { readingsAt, stiffnessNPerMm, preloadN });

function fittedSpring(spring: Spring, sheet: ReadingSheet, words: Formats): Result<Spring> {
  const fit = fitForRoom(countedReadings(sheet.readings).readings, { words });
  return fit.ok ? ok({ ...spring, ...roundedSpring(fit) }) : fail(422, "no-line", fit.say);
}
