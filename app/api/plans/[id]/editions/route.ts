/** The plan's signed editions. */

import { listPlanEditions } from "#server/editions/editions.ts";
import { guarded } from "#server/http/respond.ts";

export const GET = guarded({}, ({ app, actor, params }) => listPlanEditions(app, actor, params.id ?? ""));
