/** Hands the plan back with a note. */
import { guarded } from "#server/http/respond.ts";
import { handBack } from "#server/plans/hand-back.ts";
import { requiredNoteSchema } from "#server/plans/plan-states.ts";

export const POST = guarded({ body: requiredNoteSchema }, ({ app, actor, params, body }) =>
  handBack(app, actor, params.id ?? "", body.note),
);
