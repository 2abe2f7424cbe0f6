/** Hands the plan back with a note. */
import { guarded } from "#server/http/respond.ts";
import { needsPlan } from "#server/plans/open-plan.ts";
import { handBack } from "#server/sign-off/hand-back.ts";
import { returnSchema } from "#server/sign-off/plan-states.ts";

export const POST = guarded(
  { body: returnSchema, first: needsPlan("plan.hand-back") },
  ({ app, actor, params, body }) => handBack(app, actor, params.id ?? "", body),
);
