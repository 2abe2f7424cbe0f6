/** Signs off the plan as it was read. */
import { guarded } from "#server/http/respond.ts";
import { needsPlan } from "#server/plans/open-plan.ts";
import { signPlan, signSchema } from "#server/sign-off/sign-plan.ts";

export const POST = guarded({ body: signSchema, first: needsPlan("plan.sign") }, ({ app, actor, params, body }) =>
  signPlan(app, actor, params.id ?? "", body),
);
