/** Finds a proposal with its plan and the asker's right, and says whether it can still be answered. */
import { FORMER_MEMBER, namesById } from "#db/repos/people-repo.ts";
import { type ProposalRow, readProposal } from "#db/repos/proposal-repo.ts";
import { takenProposals, wasUndone } from "#lib/doc/proposal-marks.ts";
import type { Actor, Person, PlanAction } from "#lib/policy/can.ts";
import { NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { type OpenedPlan, openPlan } from "#server/plans/open-plan.ts";
import { withPlan } from "#server/plans/plan-doc.ts";
import { BEING_TAKEN_BY_YOU, beingTaken, declinedBy, takenBy, withdrawnBy } from "./refusals.ts";

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
 * Whether it can be answered now. What was claimed is done once the document has its mark. A claim without one holds for a
 * minute: its page died before it wrote, or has not written yet. That is so for the claimer too, who may have it open twice;
 * only what they undid is theirs to answer at once. Errors: 409 already-taken, being-taken, already-declined,
 * already-withdrawn, and those of reading the document.
 */
export function stillOpen(app: Springline, { row, person, proposal }: OpenedProposal): Result<unknown> {
  if (proposal.state === "open") return ok(null);
  const name = namesById(app.db).get(proposal.endedBy ?? "") ?? FORMER_MEMBER;
  if (proposal.state === "declined") return declinedBy(name);
  if (proposal.state === "withdrawn") return withdrawnBy(name);
  const marked = withPlan(app, row, (_, doc) => {
    return ok({ now: takenProposals(doc).has(proposal.id), undone: wasUndone(doc, proposal.id) });
  });
  if (!marked.ok) return marked;
  if (marked.value.now) return takenBy(name);
  if (!isFresh(app, proposal)) return ok(null);
  if (proposal.endedBy !== person.id) return beingTaken(name);
  return marked.value.undone ? ok(null) : BEING_TAKEN_BY_YOU;
}

/** Whether this is the claim that they made a moment ago, sent again: because its answer was lost, or by a second press. */
export function isSameClaim(app: Pick<Springline, "now">, opened: OpenedProposal, parts: readonly string[]): boolean {
  const { proposal, person } = opened;
  if (proposal.state !== "taken" || proposal.endedBy !== person.id || !isFresh(app, proposal)) return false;
  return [...parts].sort().join(" ") === [...(proposal.taken ?? [])].sort().join(" ");
}

const isFresh = (app: Pick<Springline, "now">, { endedAt }: ProposalRow): boolean =>
  app.now() - (endedAt ?? 0) < CLAIM_MS;
