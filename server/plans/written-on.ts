/** A signed plan that says something else than its edition is in writing again. */
import type * as Y from "yjs";
import { inTransaction } from "#db/repos/doc-log-repo.ts";
import { newestEditionPlan } from "#db/repos/edition-repo.ts";
import { type PlanRow, readLastWriter } from "#db/repos/plan-repo.ts";
import { contentHash } from "#lib/canonical/canonical.ts";
import { readPlan } from "#lib/doc/read.ts";
import type { Springline } from "#server/springline.ts";
import { storeStep } from "./plan-states.ts";

/**
 * Takes a signed plan whose document was written on back to writing; true when it did. Asked after every burst of edits
 * and at every join: a server that ends between an edit and its burst finds out at the next start.
 */
export function noteWrittenOn(app: Pick<Springline, "db" | "now">, row: PlanRow, doc: Y.Doc): boolean {
  if (row.state !== "signed-off" || !differsFromEdition(app, row, doc)) return false;
  const actorId = readLastWriter(app.db, row.id) ?? row.ownerId;
  inTransaction(app.db, () =>
    storeStep(app, row.id, { state: "in-writing", note: null, actorId, event: "written-on" }),
  );
  return true;
}

/**
 * Read with the moves, machines and standards that the edition was signed with, so that a change of the library or of
 * the house alone never counts: what was signed is what reaches the floor, whatever the library says later.
 */
function differsFromEdition(app: Pick<Springline, "db">, row: PlanRow, doc: Y.Doc): boolean {
  const signed = newestEditionPlan(app.db, row.id);
  if (!signed) return true;
  const { moves, equipment, standards } = signed.plan;
  const then = readPlan(doc, { moves, equipment, standards: standards ?? {} });
  try {
    return contentHash(then) !== signed.hash;
  } catch {
    return true; // it holds what no plan can: certainly not what was signed
  }
}
