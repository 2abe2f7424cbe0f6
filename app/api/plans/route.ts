/** Plans: those I may read, and a new one. */

import { guarded, needs } from "#server/http/respond.ts";
import { createPlan, newPlanSchema } from "#server/plans/create-plan.ts";
import { listPlans } from "#server/plans/list-plans.ts";

export const GET = guarded({}, ({ app, actor }) => listPlans(app, actor));
export const POST = guarded({ body: newPlanSchema, first: needs("plan.create"), status: 201 }, ({ app, actor, body }) =>
  createPlan(app, actor, body),
);
