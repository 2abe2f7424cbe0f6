/** Hands the plan back with a note. */
import { guarded } from "#server/http/respond.ts";
import { handBack } from "#server/plans/hand-back.ts";
import { needsPlan } from "#server/plans/open-plan.ts";
import { requiredNoteSchema } from "#server/plans/plan-states.ts";

export const POST = guarded(
  { body: requiredNoteSchema, first: needsPlan("plan.hand-back") },
  ({ app, actor, params, body }) => handBack(app, actor, params.id ?? "", body.note),
);
