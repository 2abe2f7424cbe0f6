/** Archives the plan, or brings it back. */
import { guarded } from "#server/http/respond.ts";
import { archivePlan, planArchiveSchema } from "#server/plans/archive-plan.ts";
import { needsPlan } from "#server/plans/open-plan.ts";

export const POST = guarded(
  { body: planArchiveSchema, first: needsPlan("plan.delete") },
  ({ app, actor, params, body }) => archivePlan(app, actor, params.id ?? "", body.archived),
);
