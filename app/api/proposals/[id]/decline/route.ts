/** Declines a proposal with a word. */
import { guarded } from "#server/http/respond.ts";
import { declineProposal, declineSchema } from "#server/proposals/answer-proposal.ts";
import { needsProposal } from "#server/proposals/open-proposal.ts";

export const POST = guarded(
  { body: declineSchema, first: needsProposal("plan.write") },
  ({ app, actor, params, body }) => declineProposal(app, actor, params.id ?? "", body),
);
