/** Withdraws a proposal of one's own. */
import { guarded } from "#server/http/respond.ts";
import { withdrawProposal } from "#server/proposals/answer-proposal.ts";
import { needsProposal } from "#server/proposals/open-proposal.ts";

export const POST = guarded({ first: needsProposal("plan.read") }, ({ app, actor, params }) =>
  withdrawProposal(app, actor, params.id ?? ""),
);
