/** Hands the plan in. */
import { guarded } from "#server/http/respond.ts";
import { needsPlan } from "#server/plans/open-plan.ts";
import { handIn } from "#server/sign-off/hand-in.ts";
import { optionalNoteSchema } from "#server/sign-off/plan-states.ts";

export const POST = guarded(
  { body: optionalNoteSchema, first: needsPlan("plan.hand-in") },
  ({ app, actor, params, body }) => handIn(app, actor, params.id ?? "", body.note),
);
