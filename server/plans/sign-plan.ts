/**
 * Sign-off: this exact plan, with these findings, by this person. Everything is checked again and the edition written
 * in one synchronous step, so that no edit can slip in between what was read, what was checked and what is signed.
 */

import * as z from "zod";
import { type Edition, insertEdition, newestEdition } from "#db/repos/edition-repo.ts";
import type { PlanRow } from "#db/repos/plan-repo.ts";
import { readReading } from "#db/repos/reading-repo.ts";
import { readRoom } from "#db/repos/room-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { canonicalJson } from "#lib/canonical/canonical.ts";
import { buildCard, sealCard } from "#lib/card/card.ts";
import { planChanges } from "#lib/plan-diff/plan-changes.ts";
import type { Actor, Person } from "#lib/policy/can.ts";
import { fail, ok, type Result } from "#server/result.ts";
import type { Springline } from "#server/springline.ts";
import { type Assessment, assessed } from "./assess-plan.ts";
import { openPlan } from "./open-plan.ts";
import { withPlan } from "./plan-doc.ts";
import { announceState } from "./plan-news.ts";
import { optionalNoteSchema, storeStep } from "./plan-states.ts";
import { signBlockers } from "./sign-blockers.ts";

export const signSchema = optionalNoteSchema.extend({
  hash: z.string().regex(/^[0-9a-f]{64}$/, "Send the hash of the plan as you read it."),
});
export type SignBody = z.infer<typeof signSchema>;

/** How long a device may use a card, in days (common practice, no source): a year, then it is signed afresh. */
const CARD_DAYS = 366;
const DAY_MS = 86_400_000;

/**
 * Errors: 401, 403, 404; 409 not-read, changed-since-read (`details.changes`), not-handed-in, not-a-file, must-fix
 * (`details.findings`), check-broken, open-threads (`details.open`); 403 only-author; 503 signing-key.
 */
export function signPlan(
  app: Springline,
  actor: Actor,
  id: string,
  body: SignBody,
): Result<{ edition: number; hash: string }> {
  const opened = openPlan(app, actor, id, "plan.sign");
  if (!opened.ok) return opened;
  const { row, person } = opened.value;
  const signed = withPlan(app, row, (reading) => {
    const found = assessed(reading);
    if (!found.ok) return found;
    const refused = refusal(app, row, person, { now: found.value, hash: body.hash });
    return refused ?? writeEdition(app, row, person, { now: found.value, note: body.note || null });
  });
  if (signed.ok) announceState(app, id);
  return signed;
}

function refusal(
  app: Springline,
  row: PlanRow,
  person: Person,
  asked: { now: Assessment; hash: string },
): Result<never> | null {
  const { now, hash } = asked;
  const read = readReading(app.db, row.id, person.id, hash);
  if (!read) return fail(409, "not-read", "You have not read this version of the plan. Open it for sign-off first.");
  if (now.hash !== hash) {
    const changes = planChanges(read.plan, now.plan);
    const message = "The plan has changed since you read it. See what changed, then sign the plan as it is now.";
    return fail(409, "changed-since-read", message, { hash: now.hash, changes });
  }
  const blockers = signBlockers(app, row, person.id, now);
  const first = blockers[0];
  if (!first) return null;
  const details = { ...(typeof first.details === "object" ? first.details : {}), blockers };
  return fail(first.code === "only-author" ? 403 : 409, first.code, first.message, details);
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
    signedBy: person.id,
    signedAt: app.now(),
    note,
  };
  inTransaction(app.db, () => {
    insertEdition(app.db, edition);
    storeStep(app, row.id, { state: "signed-off", note, actorId: person.id, event: "signed-off", hash });
  });
  return ok({ edition: number, hash });
}

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
    // By name: a route's bundle holds another copy of the class than the server that made the keys.
    if (error instanceof Error && error.name === "SigningKeyError") return fail(503, "signing-key", error.message);
    throw error;
  }
}
