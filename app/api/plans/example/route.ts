import { guarded, needs } from "#server/http/respond.ts";
import { makeExample } from "#server/plans/example-plan.ts";

export const POST = guarded({ first: needs("plan.create") }, ({ app, actor }) => makeExample(app, actor));
