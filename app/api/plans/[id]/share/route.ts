/** Shares the plan with one person, or takes that back. */
import { guarded } from "#server/http/respond.ts";
import { needsPlan } from "#server/plans/open-plan.ts";
import { sharePlan, shareSchema } from "#server/plans/share-plan.ts";

export const POST = guarded({ body: shareSchema, first: needsPlan("plan.share") }, ({ app, actor, params, body }) =>
  sharePlan(app, actor, params.id ?? "", body),
);
