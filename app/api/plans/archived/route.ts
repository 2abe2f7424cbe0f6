/** Archived plans. */
import { guarded } from "#server/http/respond.ts";
import { listArchivedPlans } from "#server/plans/list-plans.ts";

export const GET = guarded({}, ({ app, actor }) => listArchivedPlans(app, actor));
