/** Finds a proposal with its plan and the asker's right, and says whether it can still be answered. */
import { FORMER_MEMBER, namesById } from "#db/repos/people-repo.ts";
import { type ProposalRow, readProposal } from "#db/repos/proposal-repo.ts";
import { takenProposals } from "#lib/doc/proposal-marks.ts";
import type { Actor, Person, PlanAction } from "#lib/policy/can.ts";
import { NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { type OpenedPlan, openPlan } from "#server/plans/open-plan.ts";
import { withPlan } from "#server/plans/plan-doc.ts";
import { beingTaken, declinedBy, takenBy, withdrawnBy } from "./refusals.ts";

export interface OpenedProposal extends OpenedPlan {
  readonly proposal: ProposalRow;
}

type Asking = {
  readonly app: Pick<Springline, "db">;
  readonly actor: Person;
  readonly params: { readonly id?: string };
};

/** For a route's `first`: checks the right to the proposal's plan before the body is read. */
export const needsProposal =
  (action: PlanAction) =>
  ({ app, actor, params }: Asking) =>
    openProposal(app, actor, params.id ?? "", action);

/** Errors: 401, 403, 404. */
export function openProposal(
  app: Pick<Springline, "db">,
  actor: Actor,
  id: string,
  action: PlanAction,
): Result<OpenedProposal> {
  const proposal = readProposal(app.db, id);
  if (!proposal) return NOT_FOUND;
  const opened = openPlan(app, actor, proposal.planId, action);
  return opened.ok ? ok({ ...opened.value, proposal }) : opened;
}

/**
 * How long a claim without a mark in the document keeps others away, ms. Our own choice: a page writes within the second,
 * and one that has lost its network for longer is likely to have lost it for good.
 */
const CLAIM_MS = 60_000;

/**
 * Whether it can be answered now. What was claimed is done once the document has its mark. A claim without one, because the
 * page died before it wrote or because it was undone, holds for others for a minute and for the claimer not at all. Errors:
 * 409 already-taken, being-taken, already-declined, already-withdrawn, and those of reading the document.
 */
export function stillOpen(app: Springline, { row, person, proposal }: OpenedProposal): Result<unknown> {
  if (proposal.state === "open") return ok(null);
  const name = namesById(app.db).get(proposal.endedBy ?? "") ?? FORMER_MEMBER;
  if (proposal.state === "declined") return declinedBy(name);
  if (proposal.state === "withdrawn") return withdrawnBy(name);
  const marked = withPlan(app, row, (_, doc) => ok(takenProposals(doc).has(proposal.id)));
  if (!marked.ok) return marked;
  if (marked.value) return takenBy(name);
  const isFree = proposal.endedBy === person.id || app.now() - (proposal.endedAt ?? 0) >= CLAIM_MS;
  return isFree ? ok(null) : beingTaken(name);
}
