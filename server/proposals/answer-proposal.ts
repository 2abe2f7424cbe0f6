/**
 * Taking, declining and withdrawing a proposal. Taking is a claim: the server lets one person have it, whose page then writes
 * the parts into the document and marks them there.
 */
import * as z from "zod";
import { endProposal, type ProposalEnd } from "#db/repos/proposal-repo.ts";
import { addToRecord } from "#db/repos/record-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import type { Actor } from "#lib/policy/can.ts";
import { type TakenInPart, takenInPart } from "#lib/proposal/part-words.ts";
import { MOST_PARTS } from "#lib/proposal/parts.ts";
import { ok, type Result } from "#server/base/result.ts";
import { typedText } from "#server/base/typed-text.ts";
import type { Springline } from "#server/context/springline.ts";
import { announceProposals } from "#server/news/proposal-news.ts";
import { tell } from "#server/notices/tell.ts";
import { withPlan } from "#server/plans/plan-doc.ts";
import { isSameClaim, type OpenedProposal, openProposal, stillOpen } from "./open-proposal.ts";
import { NO_SUCH_PART, NOT_THE_PROPOSER } from "./refusals.ts";

const WORD_MAX = 2000;

export const takeSchema = z.strictObject({
  parts: z.array(z.string().max(100)).min(1, "Choose at least one part to take.").max(MOST_PARTS),
});
export const declineSchema = z.strictObject({
  word: typedText.min(1, "Say in a word why you decline it.").max(WORD_MAX, `It has at most ${WORD_MAX} characters.`),
});

/**
 * Claims the proposal with these parts for the asker, whose page writes them. The same claim again within a minute answers
 * the same and stores nothing, unless the document has its mark. Errors: 401, 403, 404, 409 already-taken,
 * being-taken, already-declined, already-withdrawn, 422 no-such-part.
 */
export function claimProposal(
  app: Springline,
  actor: Actor,
  id: string,
  { parts }: z.infer<typeof takeSchema>,
): Result<{ id: string; parts: readonly string[] }> {
  const done = answer(app, actor, id, "plan.write", ({ proposal }) => {
    const known = new Set(proposal.parts.map((part) => part.id));
    const taken = [...new Set(parts)];
    return taken.every((part) => known.has(part)) ? ok({ state: "taken", taken, word: null }) : NO_SUCH_PART;
  });
  return done.ok ? ok({ id, parts: done.value.taken ?? [] }) : done;
}

/** Errors: 401, 403, 404, 409 as for taking. */
export function declineProposal(
  app: Springline,
  actor: Actor,
  id: string,
  { word }: z.infer<typeof declineSchema>,
): Result<{ id: string }> {
  const done = answer(app, actor, id, "plan.write", () => ok({ state: "declined", taken: null, word }));
  return done.ok ? ok({ id }) : done;
}

/** For the person who made it. Errors: 401, 403, 404, 409 as for taking. */
export function withdrawProposal(app: Springline, actor: Actor, id: string): Result<{ id: string }> {
  const done = answer(app, actor, id, "plan.read", ({ proposal, person }) =>
    proposal.byId === person.id ? ok({ state: "withdrawn", taken: null, word: null }) : NOT_THE_PROPOSER,
  );
  return done.ok ? ok({ id }) : done;
}

type Answer = Pick<ProposalEnd, "taken" | "word"> & { readonly state: "taken" | "declined" | "withdrawn" };

/** Of two people who answer at once one wins: a row that has changed since it was read is read and judged again. */
function answer(
  app: Springline,
  actor: Actor,
  id: string,
  action: "plan.write" | "plan.read",
  wanted: (opened: OpenedProposal) => Result<Answer>,
): Result<Answer> {
  const opened = openProposal(app, actor, id, action);
  if (!opened.ok) return opened;
  const given = wanted(opened.value);
  if (!given.ok) return given;
  const open = stillOpen(app, opened.value);
  const may = open.ok || open.error.code === "being-taken";
  if (may && given.value.taken && isSameClaim(app, opened.value, given.value.taken)) return given;
  if (!open.ok) return open;
  const stored = inTransaction(app.db, () => store(app, opened.value, given.value));
  if (!stored) return answer(app, actor, id, action, wanted);
  announceProposals(app, opened.value.row.id);
  return given;
}

function store(app: Springline, { row, person, proposal }: OpenedProposal, { state, taken, word }: Answer): boolean {
  const at = app.now();
  if (!endProposal(app.db, proposal, { state, taken, word, endedBy: person.id, endedAt: at })) return false;
  const part = taken ? partTaken(app, row, proposal.parts, taken) : null;
  const body = {
    proposal: proposal.id,
    item: proposal.itemId,
    ...(taken ? { parts: taken } : {}),
    ...(part ? { of: part.of, named: part.named } : {}),
    ...(word ? { word } : {}),
  };
  const subject = `plan/${row.id}`;
  addToRecord(app.db, { at, actorId: person.id, subject, kind: `proposal-${state}`, body });
  if (state === "withdrawn") return true;
  const item = proposal.itemId === null ? {} : { itemId: proposal.itemId };
  const data = {
    byId: person.id,
    proposalId: proposal.id,
    taken: state === "taken",
    ...item,
    ...(part ? { part } : {}),
  };
  tell(app, { kind: "answer", to: [proposal.byId], planId: row.id, data });
  return true;
}

/** Named as the plan names its springs; by their ids when it cannot be read at the moment. */
function partTaken(
  app: Springline,
  row: OpenedProposal["row"],
  parts: OpenedProposal["proposal"]["parts"],
  taken: readonly string[],
): TakenInPart | null {
  const named = withPlan(app, row, ({ plan }) => ok(takenInPart(plan, parts, taken)));
  return named.ok ? named.value : takenInPart({ equipment: NO_EQUIPMENT }, parts, taken);
}
const NO_EQUIPMENT = { name: "none", carriageTravelMm: 1, springs: [] };
