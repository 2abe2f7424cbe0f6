/** A lead takes the reading of the plan up, or lets it go. */
import { guarded } from "#server/http/respond.ts";
import { needsPlan } from "#server/plans/open-plan.ts";
import { takeUp, takeUpSchema } from "#server/rounds/take-up.ts";

export const POST = guarded(
  { body: takeUpSchema, first: needsPlan("plan.hand-back") },
  ({ app, actor, params, body }) => takeUp(app, actor, params.id ?? "", body),
);
