/** Claims a proposal for the page that writes it. */
import { guarded } from "#server/http/respond.ts";
import { claimProposal, takeSchema } from "#server/proposals/answer-proposal.ts";
import { needsProposal } from "#server/proposals/open-proposal.ts";

export const POST = guarded({ body: takeSchema, first: needsProposal("plan.write") }, ({ app, actor, params, body }) =>
  claimProposal(app, actor, params.id ?? "", body),
);
