/** A lead withdraws a signed edition and says why. Devices keep its card but do not start it any more. */
import * as z from "zod";
import { type EditionText, newestEdition, readEditionText } from "#db/repos/edition-repo.ts";
import { addPlanEvent } from "#db/repos/event-repo.ts";
import { insertWithdrawal, readWithdrawal } from "#db/repos/withdrawal-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { sha256Hex } from "#lib/canonical/canonical.ts";
import type { Actor } from "#lib/policy/can.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { fail, NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import { typedLine } from "#server/base/typed-text.ts";
import type { Springline } from "#server/context/springline.ts";
import { announceState } from "#server/news/plan-news.ts";
import { tellWithdrawn } from "#server/notices/tell-plan.ts";
import { openAnyPlan } from "#server/plans/open-plan.ts";
import { keepWithdrawn, type MomentText, NO_TEXT } from "#server/rounds/keep-rounds.ts";
import { storeStep } from "./plan-states.ts";

/** Short, since it is read on the screen of a device by somebody about to teach. */
const REASON_MAX = 200;
export const withdrawSchema = z.strictObject({
  reason: typedLine
    .min(1, "Give a reason: a coach who wants to teach this edition will read it.")
    .max(REASON_MAX, `A reason has at most ${REASON_MAX} characters.`),
});

/**
 * A plan that is signed off with this edition is returned with notes, so that it can be signed off again. The reason must not be
 * empty. Errors: 401, 403, 404, 409 withdrawn-already.
 */
export function withdrawEdition(
  app: Springline,
  actor: Actor,
  which: { readonly planId: string; readonly number: number },
  reason: string,
): Result<{ number: number }> {
  const { planId, number } = which;
  // Also for deleted plans: earlier versions could delete signed ones, whose cards may still be on a device.
  const opened = openAnyPlan(app, actor, planId, "plan.withdraw");
  if (!opened.ok) return opened;
  const edition = Number.isInteger(number) ? readEditionText(app.db, planId, number) : undefined;
  if (!edition) return NOT_FOUND;
  if (readWithdrawal(app.db, planId, number)) {
    return fail(409, "withdrawn-already", `Edition ${number} is already withdrawn.`);
  }
  const { row, person } = opened.value;
  const at = app.now();
  inTransaction(app.db, () => {
    insertWithdrawal(app.db, { planId, number, withdrawnBy: person.id, withdrawnAt: at, reason });
    const step = { actorId: person.id, note: reason, hash: edition.hash };
    const stands = row.state === "signed-off" && newestEdition(app.db, planId)?.number === number;
    if (stands) storeStep(app, planId, { ...step, state: "handed-back", event: "withdrawn" });
    else addPlanEvent(app.db, { ...step, planId, at, kind: "withdrawn" });
    keepWithdrawn(app, planId, edition.round, { actorId: person.id, note: reason, text: editionText(edition) });
    tellWithdrawn(app, row, { byId: person.id, edition: number }, edition.signedBy);
  });
  announceState(app, planId);
  return ok({ number });
}

/** An edition whose row was altered is withdrawn like any other, but its text is not kept as what was signed. */
function editionText({ planJson, hash, findingsJson }: EditionText): MomentText {
  if (sha256Hex(planJson) !== hash) return NO_TEXT;
  return { hash, planJson, findings: JSON.parse(findingsJson) as Finding[] }; // written with the edition
}
