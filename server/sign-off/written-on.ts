/** A signed plan that differs from its edition is in writing again. */
import { newestEdition } from "#db/repos/edition-repo.ts";
import { readLastWriter, readPlanRow } from "#db/repos/plan-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import type { Springline } from "#server/context/springline.ts";
import { storeStep } from "./plan-states.ts";

/**
 * Puts a signed plan back in writing after a check found that it was written on; true if it did. `signedHash` is the edition
 * that the check compared with: if a newer one has been signed since, nothing happens.
 */
export function noteWrittenOn(app: Pick<Springline, "db" | "now">, planId: string, signedHash: string): boolean {
  return inTransaction(app.db, () => {
    const row = readPlanRow(app.db, planId);
    if (row?.state !== "signed-off" || newestEdition(app.db, planId)?.hash !== signedHash) return false;
    const actorId = readLastWriter(app.db, planId) ?? row.ownerId;
    storeStep(app, planId, { state: "in-writing", note: null, actorId, event: "written-on" });
    return true;
  });
}
