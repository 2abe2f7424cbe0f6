/**
 * Sign-off: this exact plan, with these findings, by this person. The rules run on another thread; that the plan still is
 * what was read and what was checked, and writing the edition, are one synchronous step: no edit can come in between
 * (INV-12).
 */

import * as z from "zod";
import { type Edition, insertEdition, newestEdition } from "#db/repos/edition-repo.ts";
import type { PlanRow } from "#db/repos/plan-repo.ts";
import { readReading } from "#db/repos/reading-repo.ts";
import { addToRecord } from "#db/repos/record-repo.ts";
import { readRoom } from "#db/repos/room-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { newestWithdrawal } from "#db/repos/withdrawal-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { canonicalJson, contentHash } from "#lib/canonical/canonical.ts";
import { buildCard, sealCard } from "#lib/card/card.ts";
import { agree } from "#lib/plan/format.ts";
import { planChanges } from "#lib/plan-diff/plan-changes.ts";
import type { Actor, Person } from "#lib/policy/can.ts";
import { acceptedOf, lookAgainLeft } from "#server/acceptances/accepted-of.ts";
import { fail, ok, type Result } from "#server/base/result.ts";
import type { Assessment } from "#server/context/assessment.ts";
import type { Springline } from "#server/context/springline.ts";
import { personFormats } from "#server/formats/formats.ts";
import { announceState } from "#server/news/plan-news.ts";
import { tellSigned } from "#server/notices/tell-plan.ts";
import { openPlan } from "#server/plans/open-plan.ts";
import { assessNow, withPlan } from "#server/plans/plan-doc.ts";
import { endRound, momentText } from "#server/rounds/keep-rounds.ts";
import { otherRound } from "#server/rounds/same-round.ts";
import { roundNoteSchema, storeStep } from "./plan-states.ts";
import { signBlockers } from "./sign-blockers.ts";

export const signSchema = roundNoteSchema.extend({
  hash: z.string().regex(/^[0-9a-f]{64}$/, "Send the hash of the plan that you read."),
  /** How many *look again* findings the lead has said to leave open. A program that sends none is not asked. */
  leftOpen: z.int().min(0).optional(),
});
export type SignBody = z.infer<typeof signSchema>;

/** How long a device may use a card, in days: a year, after which the plan is signed off again. Common practice. */
const CARD_DAYS = 366;
const DAY_MS = 86_400_000;

/**
 * Errors: 401, 403, 404; 409 other-round, not-read, withdrawn-since-read, changed-since-read (`details.changes`), not-handed-in,
 * not-a-file, must-fix
 * (`details.findings`), check-broken, open-threads (`details.open`); 403 only-author; 503 signing-key.
 */
export async function signPlan(
  app: Springline,
  actor: Actor,
  id: string,
  body: SignBody,
): Promise<Result<{ edition: number; hash: string }>> {
  const opened = openPlan(app, actor, id, "plan.sign");
  if (!opened.ok) return opened;
  const found = await assessNow(app, opened.value.row);
  if (!found.ok) return found;
  // Rights, state and words may have changed while the rules were run.
  const still = openPlan(app, actor, id, "plan.sign");
  if (!still.ok) return still;
  const { row, person } = still.value;
  const signed = withPlan(app, row, ({ plan }) => {
    const now = { ...found.value, plan, hash: contentHash(plan) };
    const refused = refusal(app, row, person, { now, assessed: found.value.hash, ...body });
    return refused ?? writeEdition(app, row, person, { now, note: body.note || null });
  });
  if (signed.ok) announceState(app, id);
  return signed;
}

function refusal(
  app: Springline,
  row: PlanRow,
  person: Person,
  asked: { now: Assessment; assessed: string } & Pick<SignBody, "hash" | "leftOpen" | "round">,
): Result<never> | null {
  const { now, assessed, hash, leftOpen, round } = asked;
  const other = otherRound(app, row, round);
  if (other) return other;
  const read = readReading(app.db, row.id, person.id, hash);
  if (!read) return fail(409, "not-read", "You have not read this version of the plan. Open the sign-off first.");
  const withdrawn = newestWithdrawal(app.db, row.id);
  if (withdrawn && withdrawn.withdrawnAt > read.at) return withdrawnSince(withdrawn.number);
  if (now.hash !== hash || assessed !== hash) {
    const changes = planChanges(read.plan, now.plan, personFormats(app, person.id));
    const message = "The plan has changed since you read it. Look at the changes, then sign the plan as it is now.";
    return fail(409, "changed-since-read", message, { hash: now.hash, changes });
  }
  const blockers = signBlockers(app, row, person.id, now);
  const first = blockers[0];
  if (!first)
    return leftOpen === undefined ? null : leftOpenRefusal(lookAgainLeft(app, row.id, now.findings).length, leftOpen);
  const details = { ...(typeof first.details === "object" ? first.details : {}), blockers };
  return fail(first.code === "only-author" ? 403 : 409, first.code, first.message, details);
}

/** Why an edition was withdrawn is part of what a lead reads before the next one. */
const withdrawnSince = (number: number): Result<never> =>
  fail(
    409,
    "withdrawn-since-read",
    `Edition ${number} was withdrawn after you read this plan. Read why, open the sign-off again, then decide.`,
  );

/** Findings also come from the studio's standards, which may change while the words stay. */
function leftOpenRefusal(open: number, said: number): Result<never> | null {
  if (open === said) return null;
  const findings = agree(open, "One finding is", `${open} findings are`);
  const message = `${findings} open now, not ${said}. Read the plan again, then decide.`;
  return fail(409, "left-open-changed", message, { open });
}

function writeEdition(
  app: Springline,
  row: PlanRow,
  person: Person,
  signing: { now: Assessment; note: string | null },
): Result<{ edition: number; hash: string }> {
  const { now, note } = signing;
  const { plan, hash, findings } = now;
  const number = (newestEdition(app.db, row.id)?.number ?? 0) + 1;
  const card = sealedCard(app, row, { now, number });
  if (!card.ok) return card;
  const edition = {
    planId: row.id,
    number,
    hash,
    planJson: canonicalJson(plan),
    card: card.value,
    findings,
    accepted: acceptedOf(app, row.id, findings),
    signedBy: person.id,
    signedAt: app.now(),
    note,
  };
  inTransaction(app.db, () => {
    const said = { note, actorId: person.id };
    const round = endRound(app, row, { ...said, outcome: "signed", edition: number, text: momentText(now) });
    insertEdition(app.db, { ...edition, round });
    storeStep(app, row.id, { ...said, state: "signed-off", event: "signed-off", hash });
    recordLeftOpen(app, edition);
    tellSigned(app, row, { byId: person.id, round, edition: number });
  });
  return ok({ edition: number, hash });
}

/** What the lead knew to be open and signed all the same. */
function recordLeftOpen(app: Springline, { planId, number, findings, signedBy }: SignedEdition): void {
  const open = lookAgainLeft(app, planId, findings);
  if (open.length === 0) return;
  const body = { edition: number, findings: open.map(({ key, rule, message }) => ({ key: key ?? rule, message })) };
  const entry = { at: app.now(), actorId: signedBy, subject: `plan/${planId}`, kind: "signed-with-open", body };
  addToRecord(app.db, entry);
}

type SignedEdition = Pick<Edition, "planId" | "number" | "findings" | "signedBy">;

function sealedCard(app: Springline, row: PlanRow, made: { now: Assessment; number: number }): Result<Edition["card"]> {
  const studio = readStudio(app.db);
  const room = readRoom(app.db, row.roomId);
  const issuedAt = app.now();
  const card = buildCard({
    studio: { name: studio?.name ?? "", town: studio?.town ?? "" },
    planId: row.id,
    number: made.number,
    room: { id: row.roomId, name: room?.name ?? "" },
    plan: made.now.plan,
    issuedAt,
    expiresAt: issuedAt + CARD_DAYS * DAY_MS,
  });
  try {
    return ok(sealCard(card, app.keys.keyId, (bytes) => app.keys.sign(bytes)));
  } catch (error) {
    // By name: the route handlers' bundle holds another copy of the class than the server.
    if (error instanceof Error && error.name === "SigningKeyError") return fail(503, "signing-key", error.message);
    throw error;
  }
}
