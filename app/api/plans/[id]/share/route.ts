/** Shares the plan with one person, or takes that back. */
import { guarded } from "#server/http/respond.ts";
import { sharePlan, shareSchema } from "#server/plans/share-plan.ts";

export const POST = guarded({ body: shareSchema }, ({ app, actor, params, body }) =>
  sharePlan(app, actor, params.id ?? "", body),
);
