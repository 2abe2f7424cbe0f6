/** Plans that were deleted and may be brought back. */

import { guarded } from "#server/http/respond.ts";
import { listDeletedPlans } from "#server/plans/list-plans.ts";

export const GET = guarded({}, ({ app, actor }) => listDeletedPlans(app, actor));
