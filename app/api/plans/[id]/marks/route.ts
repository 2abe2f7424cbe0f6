/** Marks by the rubric on a round of reading or a class. */
import { guarded } from "#server/http/respond.ts";
import { readPlanMarks } from "#server/marks/plan-marks.ts";
import { marksSchema, setMarks } from "#server/marks/set-marks.ts";
import { needsPlan } from "#server/plans/open-plan.ts";

export const GET = guarded({}, ({ app, actor, params }) => readPlanMarks(app, actor, params.id ?? ""));
export const POST = guarded({ body: marksSchema, first: needsPlan("plan.mark") }, ({ app, actor, params, body }) =>
  setMarks(app, actor, params.id ?? "", body),
);
