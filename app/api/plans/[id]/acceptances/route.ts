/** Findings that a lead accepts as they stand. */
import { acceptFinding, acceptSchema, listPlanAcceptances } from "#server/acceptances/accept.ts";
import { guarded } from "#server/http/respond.ts";
import { needsPlan } from "#server/plans/open-plan.ts";

export const GET = guarded({}, ({ app, actor, params }) => listPlanAcceptances(app, actor, params.id ?? ""));
export const POST = guarded(
  { body: acceptSchema, first: needsPlan("plan.accept-finding"), status: 201 },
  ({ app, actor, params, body }) => acceptFinding(app, actor, params.id ?? "", body),
);
