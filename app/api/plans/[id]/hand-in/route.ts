/** Hands the plan in. */
import { guarded } from "#server/http/respond.ts";
import { handIn } from "#server/plans/hand-in.ts";
import { optionalNoteSchema } from "#server/plans/plan-states.ts";

export const POST = guarded({ body: optionalNoteSchema }, ({ app, actor, params, body }) =>
  handIn(app, actor, params.id ?? "", body.note),
);
