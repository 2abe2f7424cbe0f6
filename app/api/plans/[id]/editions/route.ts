/** The plan's signed editions. */
import { guarded } from "#server/http/respond.ts";
import { listPlanEditions } from "#server/plans/editions.ts";

export const GET = guarded({}, ({ app, actor, params }) => listPlanEditions(app, actor, params.id ?? ""));
