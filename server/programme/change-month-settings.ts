/** A manager changes what months say of the studio; months that somebody has open follow at once. */
import * as z from "zod";
import { addToRecord } from "#db/repos/record-repo.ts";
import { writeSetting } from "#db/repos/setting-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { sameData } from "#lib/plan/same-data.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { NO_RIGHT, ok, type Result } from "#server/base/result.ts";
import { changedMeanwhile, overSeen } from "#server/base/seen-values.ts";
import type { Springline } from "#server/context/springline.ts";
import {
  type MonthSettings,
  monthSettings,
  monthSettingsSchema,
  withoutMarks,
} from "#server/month-facts/month-settings.ts";
import { announceToMonths } from "./announce-to-months.ts";

export const monthSettingsChangeSchema = z.strictObject({
  settings: monthSettingsSchema,
  /** As they were before the change, so that another manager's change is not overwritten unseen. */
  seen: monthSettingsSchema,
});

/**
 * Of the settings, those that were changed from what was seen. Writes nothing and tells nobody when nothing changes. Errors: 403 no-right, 409 changed-meanwhile.
 */
export function changeMonthSettings(
  app: Pick<Springline, "db" | "documents" | "now">,
  actor: Actor,
  { settings, seen }: z.infer<typeof monthSettingsChangeSchema>,
): Result<MonthSettings> {
  if (actor?.kind !== "person" || !can(actor, "month.manage")) return NO_RIGHT;
  let written = false;
  const changed = inTransaction(app.db, () => {
    const now = monthSettings(app);
    const before = withoutMarks(now);
    const merged = overSeen(before, seen, settings);
    if (!merged.ok) return changedMeanwhile("this");
    if (sameData(merged.value, before)) return ok(before);
    written = true;
    const at = app.now();
    const body = merged.value;
    writeSetting(app.db, "month", { data: { ...body, uid: now.uid }, updatedAt: at });
    addToRecord(app.db, { at, actorId: actor.id, subject: "studio", kind: "month-settings", body });
    return ok(body);
  });
  if (written) announceToMonths(app);
  return changed;
}
