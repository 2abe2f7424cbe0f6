/**
 * Deletes a plan so that it can be restored: its row is marked, its document and threads stay. Only for plans that were
 * never signed: a signed one may be on the devices of a room.
 */

import { newestEdition } from "#db/repos/edition-repo.ts";
import { addPlanEvent } from "#db/repos/event-repo.ts";
import { setPlanDeleted } from "#db/repos/plan-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import type { Actor } from "#lib/policy/can.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { announcePlanToMonths } from "#server/news/month-news.ts";
import { openAnyPlan, openPlan } from "./open-plan.ts";
import { handedInPlan, WAS_SIGNED } from "./refusals.ts";

/** Closes its open pages at once. Errors: 401, 403, 404, 409 was-signed, wrong-state. */
export function deletePlan(app: Springline, actor: Actor, id: string): Result<{ id: string }> {
  const opened = openPlan(app, actor, id, "plan.delete");
  if (!opened.ok) return opened;
  if (newestEdition(app.db, id)) return WAS_SIGNED;
  const { state } = opened.value.row;
  if (state === "handed-in") return handedInPlan(state, "delete");
  return storeDeleted(app, id, opened.value.person.id, app.now());
}

/** Restores a deleted plan. Does nothing to one that is not deleted. Errors: 401, 403, 404. */
export function restorePlan(app: Springline, actor: Actor, id: string): Result<{ id: string }> {
  const opened = openAnyPlan(app, actor, id, "plan.delete");
  if (!opened.ok) return opened;
  if (opened.value.row.deletedAt === null) return ok({ id });
  return storeDeleted(app, id, opened.value.person.id, null);
}

function storeDeleted(app: Springline, id: string, actorId: string, deletedAt: number | null): Result<{ id: string }> {
  inTransaction(app.db, () => {
    setPlanDeleted(app.db, id, deletedAt);
    const kind = deletedAt === null ? "restored" : "deleted";
    addPlanEvent(app.db, { planId: id, at: app.now(), actorId, kind });
  });
  app.documents.refreshAccess();
  announcePlanToMonths(app, id);
  return ok({ id });
}
