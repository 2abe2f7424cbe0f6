/** Signs off the plan as it was read. */
import { guarded } from "#server/http/respond.ts";
import { signPlan, signSchema } from "#server/plans/sign-plan.ts";

export const POST = guarded({ body: signSchema }, ({ app, actor, params, body }) =>
  signPlan(app, actor, params.id ?? "", body),
);
