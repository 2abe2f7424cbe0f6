/** A lead accepts a *look again* of a month as it stands, with a reason, or ends that (INV-28). */
import * as z from "zod";
import {
  endMonthAcceptance,
  insertMonthAcceptance,
  listMonthAcceptances,
  readMonthAcceptance,
} from "#db/repos/month-acceptance-repo.ts";
import { addToRecord } from "#db/repos/record-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { monthAcceptanceKey, monthStillAccepted } from "#lib/acceptance/month-accepted.ts";
import type { MonthFinding } from "#lib/month/types.ts";
import type { Actor } from "#lib/policy/can.ts";
import type { AcceptanceView } from "#lib/protocol/messages.ts";
import { acceptanceReasonSchema } from "#server/acceptances/accept.ts";
import { ALREADY_ENDED, alreadyAccepted, notLookAgain, standsDifferently } from "#server/acceptances/refusals.ts";
import { NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { announceMonthAccepted } from "#server/news/month-sign-news.ts";
import { mayWithMonth, monthNow } from "./month-now.ts";

const MOST_SLOTS = 1000;

/** The finding as the lead saw it, values and all, and why it may stand. */
export const acceptInMonthSchema = z.strictObject({
  finding: z.strictObject({
    id: z.string().max(400),
    rule: z.string().max(64),
    slots: z.array(z.string().max(64)).max(MOST_SLOTS),
    message: z.string().max(2000),
    values: z.record(z.string(), z.unknown()),
  }),
  reason: acceptanceReasonSchema,
});
type AcceptInMonthBody = z.infer<typeof acceptInMonthSchema>;

/** Those that nobody has ended, the oldest first. Errors: 401, 403, 404. */
export function readMonthAcceptances(
  app: Springline,
  actor: Actor,
  month: string,
): Result<{ accepted: AcceptanceView[] }> {
  const may = mayWithMonth(app, actor, month, "programme.read");
  return may.ok ? ok({ accepted: listMonthAcceptances(app.db, month) }) : may;
}

/**
 * The server looks for the finding itself, and accepts it only with the very values that the lead saw. Errors: 401, 403, 404;
 * 409 finding-changed (`details.finding`: what stands now, or null), not-look-again, already-accepted.
 */
export function acceptInMonth(
  app: Springline,
  actor: Actor,
  month: string,
  { finding: seen, reason }: AcceptInMonthBody,
): Result<{ id: string }> {
  const may = mayWithMonth(app, actor, month, "month.sign");
  if (!may.ok) return may;
  const now = monthNow(app, month);
  if (!now.ok) return now;
  const finding = now.value.findings.find(({ id }) => id === seen.id);
  const findingKey = finding ? monthAcceptanceKey(finding) : null;
  if (!finding || findingKey === null) return standsDifferently(null);
  if (finding.level !== "look") return notLookAgain(finding.level);
  if (findingKey !== monthAcceptanceKey({ ...seen, level: "look" })) return standsDifferently(finding);
  const before = listMonthAcceptances(app.db, month).find((one) => one.findingKey === findingKey);
  if (before) return alreadyAccepted(before);
  return store(app, { month, finding, findingKey, reason, by: may.value.person.id });
}

interface Accepting {
  readonly month: string;
  readonly finding: MonthFinding;
  readonly findingKey: string;
  readonly reason: string;
  readonly by: string;
}

function store(
  app: Springline,
  { month, finding, findingKey, reason, by }: Accepting,
): Result<{ readonly id: string }> {
  const [id, at] = [app.newId(), app.now()];
  const { rule, message } = finding;
  inTransaction(app.db, () => {
    const made = { id, month, rule, findingId: finding.id, findingKey, message, reason };
    insertMonthAcceptance(app.db, { ...made, acceptedBy: by, acceptedAt: at });
    const body = { id, rule, findingKey, message, reason };
    addToRecord(app.db, { at, actorId: by, subject: `month/${month}`, kind: "finding-accepted", body });
  });
  announceMonthAccepted(app, month);
  return ok({ id });
}

/** The finding stands again. Errors: 401, 403, 404, 409 already-ended. */
export function endAcceptedInMonth(app: Springline, actor: Actor, month: string, id: string): Result<{ ended: true }> {
  const may = mayWithMonth(app, actor, month, "month.sign");
  if (!may.ok) return may;
  const row = readMonthAcceptance(app.db, id);
  if (row?.month !== month) return NOT_FOUND;
  if (row.undoneAt !== null) return ALREADY_ENDED;
  const by = { userId: may.value.person.id, at: app.now() };
  inTransaction(app.db, () => {
    endMonthAcceptance(app.db, id, by);
    const body = { id, rule: row.rule, findingKey: row.findingKey, message: row.message };
    const entry = { at: by.at, actorId: by.userId, subject: `month/${month}`, kind: "acceptance-ended", body };
    addToRecord(app.db, entry);
  });
  announceMonthAccepted(app, month);
  return ok({ ended: true });
}

/** What an edition keeps of them: those that match what is found, in the order in which they were accepted. */
export function acceptedInMonth(
  app: Pick<Springline, "db">,
  month: string,
  findings: readonly MonthFinding[],
): AcceptanceView[] {
  const all = listMonthAcceptances(app.db, month);
  const { noLonger } = monthStillAccepted(findings, all);
  return all.filter((one) => !noLonger.includes(one));
}

/** Every *look again* that no lead has accepted as it stands. */
export function monthLookAgainLeft(
  app: Pick<Springline, "db">,
  month: string,
  findings: readonly MonthFinding[],
): MonthFinding[] {
  const { of } = monthStillAccepted(findings, listMonthAcceptances(app.db, month));
  return findings.filter((finding) => finding.level === "look" && !of.has(finding));
}
