/** Gives a month to a lead to read before sign-off, and stores what they saw: only what was read can be signed. */
import { newestMonthEdition } from "#db/repos/month-edition-repo.ts";
import { lastMonthReading, putMonthReading } from "#db/repos/month-reading-repo.ts";
import { namesById } from "#db/repos/people-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { monthChanges } from "#lib/month/changes/month-changes.ts";
import type { MonthFile, MonthFinding } from "#lib/month/types.ts";
import type { Actor } from "#lib/policy/can.ts";
import type { AcceptanceView, SignedMonth } from "#lib/protocol/messages.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { signedMonthView } from "#server/news/month-sign-news.ts";
import { acceptedInMonth, monthLookAgainLeft } from "./accept-in-month.ts";
import { type MonthBlocker, monthBlockers } from "./month-blockers.ts";
import { mayWithMonth, monthNow } from "./month-now.ts";

export interface MonthReading {
  /** SHA-256 (hex) of the canonical month, to be sent back when signing. */
  readonly hash: string;
  /** The month as it would be signed. */
  readonly file: MonthFile;
  readonly findings: readonly MonthFinding[];
  readonly blockers: readonly MonthBlocker[];
  /** The acceptances that hold. */
  readonly accepted: readonly AcceptanceView[];
  /** The *look again* findings that nobody has accepted: signing leaves them open. */
  readonly lookAgain: readonly MonthFinding[];
  /** The number the next edition will have, to be sent back when signing. */
  readonly nextEdition: number;
  /** The newest edition, and what changed since, in sentences. */
  readonly signed: SignedMonth | null;
  readonly sinceSigned: readonly string[];
  /** When this person last read the month, and what changed since; null when they never did. */
  readonly sinceRead: { readonly at: number; readonly changes: readonly string[] } | null;
}

/** Errors: 401, 403, 404; 409 or 503 when the document cannot be read. */
export function readMonthForSignOff(app: Springline, actor: Actor, month: string): Result<MonthReading> {
  const may = mayWithMonth(app, actor, month, "month.sign");
  if (!may.ok) return may;
  const now = monthNow(app, month);
  if (!now.ok) return now;
  const { file, json, hash, findings } = now.value;
  const userId = may.value.person.id;
  const before = lastMonthReading(app.db, month, userId);
  inTransaction(app.db, () => putMonthReading(app.db, { month, userId, hash, fileJson: json, at: app.now() }));
  const newest = newestMonthEdition(app.db, month);
  const changedSince = (fileJson: string) => monthChanges(JSON.parse(fileJson) as MonthFile, file); // written by the server
  return ok({
    hash,
    file,
    findings,
    blockers: monthBlockers(app, month, now.value),
    accepted: acceptedInMonth(app, month, findings),
    lookAgain: monthLookAgainLeft(app, month, findings),
    nextEdition: (newest?.number ?? 0) + 1,
    signed: newest ? signedMonthView(newest, namesById(app.db)) : null,
    sinceSigned: newest ? changedSince(newest.fileJson) : [],
    sinceRead: before ? { at: before.at, changes: changedSince(before.fileJson) } : null,
  });
}
