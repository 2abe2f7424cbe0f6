/** Puts the plan out of the way, or back. */
import { guarded } from "#server/http/respond.ts";
import { archivePlan, archiveSchema } from "#server/plans/archive-plan.ts";

export const POST = guarded({ body: archiveSchema }, ({ app, actor, params, body }) =>
  archivePlan(app, actor, params.id ?? "", body.archived),
);
