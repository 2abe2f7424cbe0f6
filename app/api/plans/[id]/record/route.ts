/** What was done to the plan, by whom and when. */
import { guarded } from "#server/http/respond.ts";
import { readPlanRecord } from "#server/plans/plan-detail.ts";

export const GET = guarded({}, ({ app, actor, params }) => readPlanRecord(app, actor, params.id ?? ""));
