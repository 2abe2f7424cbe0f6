/** A lead accepts a *look again* as it stands, with a reason, or ends that (INV-28). */
import * as z from "zod";
import { endAcceptance, insertAcceptance, listAcceptances, readAcceptance } from "#db/repos/acceptance-repo.ts";
import { addToRecord } from "#db/repos/record-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { acceptanceKey } from "#lib/acceptance/accepted.ts";
import type { Formats } from "#lib/formats/formats.ts";
import type { Actor } from "#lib/policy/can.ts";
import type { AcceptanceView } from "#lib/protocol/messages.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { findingWords } from "#lib/rules/finding-words.ts";
import { NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import { typedText } from "#server/base/typed-text.ts";
import type { Springline } from "#server/context/springline.ts";
import { personFormats } from "#server/formats/formats.ts";
import { announceAccepted } from "#server/news/plan-news.ts";
import { openPlan } from "#server/plans/open-plan.ts";
import { ALREADY_ENDED, alreadyAccepted, notLookAgain, standsDifferently, UNCHECKED_TO_ACCEPT } from "./refusals.ts";

const REASON_MAX = 1000;
const LEAST_WORDS = 3;
const MESSAGE_MAX = 2000;
const KEY_MAX = 400;
const MOST_ITEMS = 500;

const wordsOf = (text: string): number => text.match(/[\p{L}\p{N}][\p{L}\p{N}'’-]*/gu)?.length ?? 0;

/** Why a finding may stay as it is. */
export const acceptanceReasonSchema = typedText
  .max(REASON_MAX, `A reason has at most ${REASON_MAX} characters.`)
  .refine((reason) => wordsOf(reason) >= LEAST_WORDS, "Say in at least three words why it may stay as it is.");

/** The finding as the lead saw it, values and all, and why it may stand. */
export const acceptSchema = z.strictObject({
  finding: z.strictObject({
    rule: z.string().max(64),
    key: z.string().max(KEY_MAX),
    items: z.array(z.string().max(64)).max(MOST_ITEMS),
    message: z.string().max(MESSAGE_MAX),
    values: z.record(z.string(), z.unknown()),
  }),
  reason: acceptanceReasonSchema,
});
type AcceptBody = z.infer<typeof acceptSchema>;

/** Those that nobody has ended, the oldest first. Errors: 401, 403, 404. */
export function listPlanAcceptances(
  app: Pick<Springline, "db">,
  actor: Actor,
  planId: string,
): Result<{ accepted: AcceptanceView[] }> {
  const opened = openPlan(app, actor, planId, "plan.read");
  return opened.ok ? ok({ accepted: listAcceptances(app.db, planId) }) : opened;
}

/**
 * The server looks for the finding itself, and accepts it only with the very values that the lead saw. Errors: 401, 403, 404;
 * 409 finding-changed (`details.finding`: what stands now, or null), not-look-again, already-accepted; 503 unchecked.
 */
export async function acceptFinding(
  app: Springline,
  actor: Actor,
  planId: string,
  { finding: seen, reason }: AcceptBody,
): Promise<Result<{ id: string }>> {
  const opened = openPlan(app, actor, planId, "plan.accept-finding");
  if (!opened.ok) return opened;
  const answer = await app.checks.now(planId);
  if (!answer) return UNCHECKED_TO_ACCEPT;
  // Rights may have changed while the rules were run.
  const still = openPlan(app, actor, planId, "plan.accept-finding");
  if (!still.ok) return still;
  const f = personFormats(app, still.value.person.id);
  const standing = standingAs(answer.findings ?? [], { ...seen, level: "look" }, f);
  if (!standing.ok) return standing;
  const { finding, findingKey } = standing.value;
  const before = listAcceptances(app.db, planId).find((one) => one.findingKey === findingKey);
  if (before) return alreadyAccepted(before);
  const [id, at, byId] = [app.newId(), app.now(), still.value.person.id];
  const { rule, message } = finding;
  inTransaction(app.db, () => {
    insertAcceptance(app.db, { id, planId, ruleId: rule, findingKey, message, reason, byId, at });
  });
  announceAccepted(app, planId);
  return ok({ id });
}

function standingAs(
  findings: readonly Finding[],
  seen: Finding,
  f: Formats,
): Result<{ readonly finding: Finding; readonly findingKey: string }> {
  const finding = findings.find((one) => one.rule === seen.rule && one.key === seen.key);
  const findingKey = finding ? acceptanceKey(finding) : null;
  if (!finding || findingKey === null) return standsDifferently(null);
  if (finding.level !== "look") return notLookAgain(finding.level);
  return findingKey === acceptanceKey(seen)
    ? ok({ finding, findingKey })
    : standsDifferently(finding, findingWords(finding, f));
}

/** The finding stands again. Errors: 401, 403, 404, 409 already-ended. */
export function endAcceptedFinding(app: Springline, actor: Actor, id: string): Result<{ ended: true }> {
  const row = readAcceptance(app.db, id);
  if (!row) return NOT_FOUND;
  const opened = openPlan(app, actor, row.planId, "plan.accept-finding");
  if (!opened.ok) return opened;
  if (row.endedAt !== null) return ALREADY_ENDED;
  const by = { userId: opened.value.person.id, at: app.now() };
  inTransaction(app.db, () => {
    endAcceptance(app.db, id, by);
    const body = { id, rule: row.ruleId, findingKey: row.findingKey, message: row.message };
    const entry = { at: by.at, actorId: by.userId, subject: `plan/${row.planId}`, kind: "acceptance-ended", body };
    addToRecord(app.db, entry);
  });
  announceAccepted(app, row.planId);
  return ok({ ended: true });
}
