/** A person's own formats. They concern nobody else and are not in the record. */
import * as z from "zod";
import { readOwnFormats, writeOwnFormats } from "#db/repos/format-choice-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import type { FormatChoices, OwnFormats } from "#lib/formats/formats.ts";
import type { Actor } from "#lib/policy/can.ts";
import { NO_RIGHT, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { formatFields, studioChoices } from "./formats.ts";

const { dates, clock, weekStart, force, length } = formatFields;
/** Only what is given changes; null is as the studio has it. */
export const ownFormatsSchema = z
  .strictObject({
    dates: dates.nullable(),
    clock: clock.nullable(),
    weekStart: weekStart.nullable(),
    force: force.nullable(),
    length: length.nullable(),
  })
  .partial();

export interface OwnFormatsView {
  readonly own: OwnFormats;
  readonly studio: FormatChoices;
}

/** Errors: 401, 403 for devices. */
export function showOwnFormats(app: Pick<Springline, "db">, actor: Actor): Result<OwnFormatsView> {
  if (actor === null) return NOT_SIGNED_IN;
  if (actor.kind !== "person") return NO_RIGHT;
  return ok({ own: readOwnFormats(app.db, actor.id), studio: studioChoices(app) });
}

/** Two pages that change different things at once both count. Errors: 401, 403 for devices. */
export function changeOwnFormats(
  app: Pick<Springline, "db">,
  actor: Actor,
  change: z.infer<typeof ownFormatsSchema>,
): Result<OwnFormatsView> {
  if (actor === null) return NOT_SIGNED_IN;
  if (actor.kind !== "person") return NO_RIGHT;
  inTransaction(app.db, () => {
    const given = Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined));
    writeOwnFormats(app.db, actor.id, { ...readOwnFormats(app.db, actor.id), ...given });
  });
  return showOwnFormats(app, actor);
}
