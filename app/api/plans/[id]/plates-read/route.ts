/** Marks plates as read by the lead who asks. */
import { guarded } from "#server/http/respond.ts";
import { needsPlan } from "#server/plans/open-plan.ts";
import { markPlatesRead, platesReadSchema } from "#server/rounds/plates-read.ts";

export const POST = guarded({ body: platesReadSchema, first: needsPlan("plan.sign") }, ({ app, actor, params, body }) =>
  markPlatesRead(app, actor, params.id ?? "", body),
);
