/** A room's seconds for the actions of a change, measured in its classes, and adopting them. For managers. */
import * as z from "zod";
import { listRoomClasses } from "#db/repos/class-log-repo.ts";
import { FORMER_MEMBER, namesById } from "#db/repos/people-repo.ts";
import { readRoom, type StudioRoom, updateRoom } from "#db/repos/room-repo.ts";
import { addStudioEvent, lastStudioEvent } from "#db/repos/studio-event-repo.ts";
import { actionSecondsSchema } from "#lib/plan/schema.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { classChanges } from "#lib/timings/class-changes.ts";
import { type StudioSeconds, studioSeconds, type TimedAction, type TimedChange } from "#lib/timings/studio-seconds.ts";
import { NO_RIGHT, NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { type EditionReader, readSoundEdition } from "#server/editions/sound-edition.ts";
import { announceStudio } from "#server/news/studio-news.ts";
import { TAUGHT_TIMINGS_CHANGED } from "./refusals.ts";

/** How many of a room's latest classes are used: people, springs and habits change over time. */
const CLASSES = 300;

export interface TaughtTimings extends StudioSeconds {
  /** How many classes of this room have a log. */
  readonly classes: number;
  /** When seconds were last adopted; null if never. */
  readonly taken: { readonly at: number; readonly byName: string; readonly seconds: TakenSeconds } | null;
}
type TakenSeconds = Readonly<Partial<Record<TimedAction, number>>>;

export const takeTimingsSchema = z.strictObject({
  /** The actions to adopt, each with the seconds that the page showed. */
  take: actionSecondsSchema.check(
    z.refine((take) => Object.values(take).some((seconds) => seconds !== undefined), {
      message: "Choose at least one action.",
    }),
  ),
});

/** Errors: 403 no-right, 404 not-found. */
export function readTaughtTimings(app: Springline, actor: Actor, roomId: string): Result<TaughtTimings> {
  if (!can(actor, "rooms.manage")) return NO_RIGHT;
  if (!readRoom(app.db, roomId)) return NOT_FOUND;
  const { classes, fit } = fitted(app, roomId);
  const last = lastStudioEvent(app.db, "timings-taken", roomId);
  const byName = last && (namesById(app.db).get(last.actorId) ?? FORMER_MEMBER);
  const seconds = actionSecondsSchema.safeParse(last?.data).data ?? {};
  return ok({ ...fit, classes, taken: last && byName ? { at: last.at, byName, seconds: given(seconds) } : null });
}

/**
 * Adopts the chosen seconds for this room; the others stay. They are worked out here from the logs; the page's numbers are
 * only compared with them. Open plans are timed again; editions do not change.
 * Errors: 403 no-right, 404 not-found, 409 changed-meanwhile.
 */
export function takeTimings(
  app: Springline,
  actor: Actor,
  roomId: string,
  { take }: z.infer<typeof takeTimingsSchema>,
): Result<StudioRoom> {
  if (actor?.kind !== "person" || !can(actor, "rooms.manage")) return NO_RIGHT;
  const taken = app.db.raw
    .transaction((): Result<StudioRoom> => {
      const room = readRoom(app.db, roomId);
      if (!room) return NOT_FOUND;
      const { fit } = fitted(app, roomId);
      const told = new Map(fit.rows.filter(({ seenIn }) => seenIn > 0).map((row) => [row.action, row.seconds]));
      const wanted = given(take);
      if (Object.entries(wanted).some(([action, seconds]) => told.get(action as TimedAction) !== seconds))
        return TAUGHT_TIMINGS_CHANGED;
      const actionSeconds = { ...room.equipment.actionSeconds, ...wanted };
      const changed = { ...room, equipment: { ...room.equipment, actionSeconds } };
      updateRoom(app.db, changed);
      const event = { at: app.now(), actorId: actor.id, subject: room.id, data: wanted };
      addStudioEvent(app.db, { ...event, kind: "timings-taken" });
      return ok(changed);
    })
    .immediate();
  if (taken.ok) announceStudio(app);
  return taken;
}

const given = (seconds: z.infer<typeof actionSecondsSchema>): TakenSeconds =>
  Object.fromEntries(Object.entries(seconds).filter(([, value]) => value !== undefined));

function fitted(app: EditionReader, roomId: string): { classes: number; fit: StudioSeconds } {
  const logs = listRoomClasses(app.db, roomId, CLASSES);
  const cards = new Map<string, Parameters<typeof classChanges>[0] | undefined>();
  const changes = logs.flatMap(({ log }): TimedChange[] => {
    const { planId, number } = log.edition;
    const key = JSON.stringify([planId, number]);
    if (!cards.has(key)) {
      const edition = readSoundEdition(app, planId, number);
      cards.set(key, edition === "damaged" ? undefined : edition?.card.card);
    }
    const card = cards.get(key);
    return card ? classChanges(card, log) : [];
  });
  return { classes: logs.length, fit: studioSeconds(changes) };
}
