/** Signed plans that I may read, with the newest edition of each. */
import { guarded } from "#server/http/respond.ts";
import { listSignedPlans } from "#server/plans/editions.ts";

export const GET = guarded({}, ({ app, actor }) => listSignedPlans(app, actor));
