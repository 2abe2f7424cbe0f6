/** The studio's own name and town. For managers. */
import * as z from "zod";
import { addToRecord } from "#db/repos/record-repo.ts";
import { readStudio, writeStudioName } from "#db/repos/studio-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { listWords } from "#lib/plan/format.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { NO_RIGHT, NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import { changedMeanwhile, overSeen } from "#server/base/seen-values.ts";
import type { Springline } from "#server/context/springline.ts";
import { studioName, studioTown } from "#server/people/fields.ts";

const named = { name: studioName, town: studioTown };
export const studioNameSchema = z.strictObject({
  ...named,
  /** As they were shown, so that another manager's change is not overwritten unseen; without it, both are set. */
  seen: z.strictObject(named).optional(),
});

/** Pages, invitations and sheets signed from then on have it; what is signed keeps the old one. Errors: 403, 404 before the first run, 409 changed-meanwhile. */
export function nameStudio(
  app: Pick<Springline, "db" | "now">,
  actor: Actor,
  { seen, ...given }: z.infer<typeof studioNameSchema>,
): Result<{ name: string; town: string }> {
  if (!can(actor, "standards.manage") || actor?.kind !== "person") return NO_RIGHT;
  return inTransaction(app.db, (): Result<{ name: string; town: string }> => {
    const before = readStudio(app.db);
    if (!before) return NOT_FOUND;
    const now = { name: before.name, town: before.town };
    const merged = overSeen(now, seen ?? now, given);
    if (!merged.ok) return changedMeanwhile(listWords(merged.clash.map((key) => `the ${key}`)));
    const { name, town } = merged.value;
    if (before.name === name && before.town === town) return ok({ name, town });
    writeStudioName(app.db, { name, town });
    const body = { name, town, before: now };
    addToRecord(app.db, { at: app.now(), actorId: actor.id, subject: "studio", kind: "studio-named", body });
    return ok({ name, town });
  });
}
