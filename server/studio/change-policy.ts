/** The studio's policy: whether people may sign off a plan that only they wrote. For managers. */
import * as z from "zod";
import { addToRecord } from "#db/repos/record-repo.ts";
import { readStudio, type Studio, writeSoleAuthorMaySign } from "#db/repos/studio-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { NO_RIGHT, NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";

export const policySchema = z.strictObject({ soleAuthorMaySign: z.boolean() });

/** Applies from the next sign-off on. Errors: 403 no-right, 404 before the first run. */
export function changePolicy(
  app: Pick<Springline, "db" | "now">,
  actor: Actor,
  change: z.infer<typeof policySchema>,
): Result<Pick<Studio, "soleAuthorMaySign">> {
  if (!can(actor, "standards.manage") || actor?.kind !== "person") return NO_RIGHT;
  const may = change.soleAuthorMaySign;
  return inTransaction(app.db, () => {
    const studio = readStudio(app.db);
    if (!studio) return NOT_FOUND;
    writeSoleAuthorMaySign(app.db, may);
    const entry = { at: app.now(), actorId: actor.id, subject: "studio", kind: "sole-author", body: { may } };
    if (studio.soleAuthorMaySign !== may) addToRecord(app.db, entry);
    return ok(change);
  });
}
