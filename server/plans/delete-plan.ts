/** Takes a plan away, with a way back: the row says when, the document, its threads and its editions stay. */
import { inTransaction } from "#db/repos/doc-log-repo.ts";
import { addPlanEvent } from "#db/repos/event-repo.ts";
import { setPlanDeleted } from "#db/repos/plan-repo.ts";
import type { Actor } from "#lib/policy/can.ts";
import { announcePlanToMonths } from "#server/programme/month-news.ts";
import { ok, type Result } from "#server/result.ts";
import type { Springline } from "#server/springline.ts";
import { openAnyPlan, openPlan } from "./open-plan.ts";

/** Open pages are closed at once; devices no longer get its card. Errors: 401, 403, 404. */
export function deletePlan(app: Springline, actor: Actor, id: string): Result<{ id: string }> {
  const opened = openPlan(app, actor, id, "plan.delete");
  if (!opened.ok) return opened;
  return storeDeleted(app, id, opened.value.person.id, app.now());
}

/** Brings a deleted plan back as it was. Does nothing to one that is not deleted. Errors: 401, 403, 404. */
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
  app.rooms.refreshAccess();
  announcePlanToMonths(app, id);
  return ok({ id });
}
