/** Signed plans that I may read, with the newest edition of each. */

import { listSignedPlans } from "#server/editions/editions.ts";
import { guarded } from "#server/http/respond.ts";

export const GET = guarded({}, ({ app, actor }) => listSignedPlans(app, actor));
