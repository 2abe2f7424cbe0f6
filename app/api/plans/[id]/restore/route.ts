/** Brings a deleted plan back. */
import { guarded } from "#server/http/respond.ts";
import { restorePlan } from "#server/plans/delete-plan.ts";

export const POST = guarded({}, ({ app, actor, params }) => restorePlan(app, actor, params.id ?? ""));
