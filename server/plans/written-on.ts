/** A signed plan that says something else than its edition is in writing again. */
import type * as Y from "yjs";
import { newestEdition } from "#db/repos/edition-repo.ts";
import { readLastWriter, readPlanRow } from "#db/repos/plan-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { contentHash } from "#lib/canonical/canonical.ts";
import { readPlan } from "#lib/doc/read.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { Springline } from "#server/springline.ts";
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

/**
 * Read with the moves, machines and standards that the edition was signed with, so that a change of the library or of
 * the house alone never counts: what was signed is what reaches the floor, whatever the library says later.
 */
export function differsFromEdition(signed: { readonly hash: string; readonly plan: Plan }, doc: Y.Doc): boolean {
  const { moves, equipment, standards } = signed.plan;
  const then = readPlan(doc, { moves, equipment, standards: standards ?? {} });
  try {
    return contentHash(then) !== signed.hash;
  } catch {
    return true; // it holds what no plan can: certainly not what was signed
  }
}
