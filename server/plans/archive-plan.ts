/** Archives a plan, or puts it back on the desks. It stays readable, and its editions stay on the devices. */
import * as z from "zod";
import { addPlanEvent } from "#db/repos/event-repo.ts";
import { setPlanArchived } from "#db/repos/plan-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import type { Actor } from "#lib/policy/can.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { openPlan } from "./open-plan.ts";
import { handedInPlan } from "./refusals.ts";

export const planArchiveSchema = z.strictObject({ archived: z.boolean() });

/** Does nothing if it already is. Errors: 401, 403, 404, 409 wrong-state. */
export function archivePlan(
  app: Springline,
  actor: Actor,
  id: string,
  archived: boolean,
): Result<{ archived: boolean }> {
  const opened = openPlan(app, actor, id, "plan.delete");
  if (!opened.ok) return opened;
  const { row, person } = opened.value;
  if (archived && row.state === "handed-in") {
    return handedInPlan(row.state, "archive");
  }
  if ((row.archivedAt !== null) !== archived) storeArchived(app, id, person.id, archived ? app.now() : null);
  return ok({ archived });
}

/** Adds a line to the record. Null puts the plan back. */
export function storeArchived(app: Pick<Springline, "db" | "now">, id: string, actorId: string, at: number | null) {
  inTransaction(app.db, () => {
    setPlanArchived(app.db, id, at);
    addPlanEvent(app.db, { planId: id, at: app.now(), actorId, kind: at === null ? "unarchived" : "archived" });
  });
}
