/** One plan: what its page needs first, its team and room, and its deletion. */
import { guarded } from "#server/http/respond.ts";
import { changePlan, changePlanSchema } from "#server/plans/change-plan.ts";
import { deletePlan } from "#server/plans/delete-plan.ts";
import { needsPlan } from "#server/plans/open-plan.ts";
import { readPlanDetail } from "#server/plans/plan-detail.ts";

export const GET = guarded({}, ({ app, actor, params }) => readPlanDetail(app, actor, params.id ?? ""));
export const PATCH = guarded(
  { body: changePlanSchema, first: needsPlan("plan.read") },
  ({ app, actor, params, body }) => changePlan(app, actor, params.id ?? "", body),
);
export const DELETE = guarded({}, ({ app, actor, params }) => deletePlan(app, actor, params.id ?? ""));
