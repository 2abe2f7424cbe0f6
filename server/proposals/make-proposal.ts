/** A lead proposes a change of one plate, or of the order of one block. */
import * as z from "zod";
import { countOpenProposals, insertProposal, listProposals, readProposal } from "#db/repos/proposal-repo.ts";
import { addToRecord } from "#db/repos/record-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { lineIdsOf } from "#lib/doc/take-proposal.ts";
import { ID_PATTERN } from "#lib/plan/schema.ts";
import type { Actor } from "#lib/policy/can.ts";
import { fits } from "#lib/proposal/fits.ts";
import { proposalPartsSchema } from "#lib/proposal/parts.ts";
import type { ProposalView } from "#lib/protocol/messages.ts";
import { ok, type Result } from "#server/base/result.ts";
import { typedText } from "#server/base/typed-text.ts";
import type { Springline } from "#server/context/springline.ts";
import { onceOnly } from "#server/limits/same-again.ts";
import { announceProposals, proposalViews } from "#server/news/proposal-news.ts";
import { tell } from "#server/notices/tell.ts";
import { type OpenedPlan, openPlan } from "#server/plans/open-plan.ts";
import { withPlan } from "#server/plans/plan-doc.ts";
import { groundChanged, SEVERAL_PLATES, TOO_LARGE, TOO_MANY_OPEN } from "./refusals.ts";

const NOTE_MAX = 2000;
/** Characters of all parts as JSON; our own choice, more than a plate with a long script needs. */
const PARTS_MAX = 60_000;
/** Of one plan; our own choice. */
const MOST_OPEN = 100;

export const newProposalSchema = z.strictObject({
  itemId: z.nullable(z.string().regex(ID_PATTERN)),
  note: z.nullable(typedText.max(NOTE_MAX, `A note has at most ${NOTE_MAX} characters.`)),
  parts: proposalPartsSchema,
});
type NewProposal = z.infer<typeof newProposalSchema>;

/** All proposals of a plan, the oldest first. Errors: 401, 403, 404. */
export function listPlanProposals(
  app: Springline,
  actor: Actor,
  planId: string,
): Result<{ proposals: readonly ProposalView[] }> {
  const opened = openPlan(app, actor, planId, "plan.read");
  return opened.ok ? ok({ proposals: proposalViews(app.db, listProposals(app.db, planId)) }) : opened;
}

/**
 * Allowed in every state of the plan; taking it from a signed plan writes on the plan as any edit does. Errors: 401, 403,
 * 404, 409 ground-changed, too-many-proposals, 422 several-items, too-large.
 */
export function makeProposal(app: Springline, actor: Actor, planId: string, made: NewProposal): Result<{ id: string }> {
  const opened = openPlan(app, actor, planId, "plan.propose");
  if (!opened.ok) return opened;
  const stands = ({ id }: { readonly id: string }) => readProposal(app.db, id)?.state === "open";
  const sending = { userId: opened.value.person.id, to: `proposal ${planId}`, sent: made, stands };
  return onceOnly(app, sending, () => storeProposal(app, opened.value, made));
}

function storeProposal(app: Springline, { row, person }: OpenedPlan, made: NewProposal): Result<{ id: string }> {
  const planId = row.id;
  const { itemId, parts } = made;
  if (!parts.every((part) => (part.kind === "order" ? part.heading : part.item) === itemId)) return SEVERAL_PLATES;
  if (JSON.stringify(parts).length > PARTS_MAX) return TOO_LARGE;
  const ground = withPlan(app, row, ({ plan }, doc) => {
    const [unfit] = fits(plan, parts, lineIdsOf(doc, parts)).flatMap(({ why }) => why ?? []);
    return unfit === undefined ? ok(null) : groundChanged(unfit);
  });
  if (!ground.ok) return ground;
  const id = app.newId();
  const at = app.now();
  const stored = inTransaction(app.db, (): Result<unknown> => {
    if (countOpenProposals(app.db, planId) >= MOST_OPEN) return TOO_MANY_OPEN;
    insertProposal(app.db, { ...{ id, planId, itemId, parts, at }, byId: person.id, note: made.note || null });
    const subject = `plan/${planId}`;
    const body = { proposal: id, item: itemId, note: made.note || null, parts };
    addToRecord(app.db, { at, actorId: person.id, subject, kind: "proposal-made", body });
    const data = { byId: person.id, proposalId: id, ...(itemId === null ? {} : { itemId }) };
    tell(app, { kind: "proposal", to: [row.ownerId, ...row.sharedWith], planId, data });
    return ok(null);
  });
  if (!stored.ok) return stored;
  announceProposals(app, planId);
  return ok({ id });
}
