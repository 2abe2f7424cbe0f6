/** Changes of the plan that leads propose. */
import { guarded } from "#server/http/respond.ts";
import { needsPlan } from "#server/plans/open-plan.ts";
import { listPlanProposals, makeProposal, newProposalSchema } from "#server/proposals/make-proposal.ts";

export const GET = guarded({}, ({ app, actor, params }) => listPlanProposals(app, actor, params.id ?? ""));
export const POST = guarded(
  { body: newProposalSchema, first: needsPlan("plan.propose"), status: 201 },
  ({ app, actor, params, body }) => makeProposal(app, actor, params.id ?? "", body),
);
