/** A signed plan that says something else than its edition is in writing again. */
import { newestEdition } from "#db/repos/edition-repo.ts";
import { readLastWriter, readPlanRow } from "#db/repos/plan-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import type { Springline } from "#server/context/springline.ts";
import { storeStep } from "./plan-states.ts";

/**
 * Takes a signed plan of which a check said that it was written on back to writing; true when it did. `signedHash`: of
 * the edition that the check compared with. A newer one has been signed since by somebody who read the plan as it is.
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
