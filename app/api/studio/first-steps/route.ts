import { putStepsAway, stepsAwaySchema } from "#server/desk/first-steps.ts";
import { guarded, needs } from "#server/http/respond.ts";

export const PUT = guarded({ body: stepsAwaySchema, first: needs("people.manage") }, ({ app, actor, body }) =>
  putStepsAway(app, actor, body),
);
