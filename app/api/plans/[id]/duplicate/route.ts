/** A copy of the plan to write on. */
import { guarded } from "#server/http/respond.ts";
import { duplicatePlan } from "#server/plans/duplicate-plan.ts";

export const POST = guarded({ status: 201 }, ({ app, actor, params }) => duplicatePlan(app, actor, params.id ?? ""));
