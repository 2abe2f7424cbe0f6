/** What the plan takes from its studio just now: library, machines, standards. */

import { guarded } from "#server/http/respond.ts";
import { readPlanStudio } from "#server/plans/read-plan-studio.ts";

export const GET = guarded({}, ({ app, actor, params }) => readPlanStudio(app, actor, params.id ?? ""));
