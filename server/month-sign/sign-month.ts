/**
 * Sign-off of a month: this exact month, with these findings, by this person. That it still is what was read, and writing the
 * edition, are one synchronous step: no edit and no other signature can come in between (INV-12).
 */
import * as z from "zod";
import { insertMonthEdition, newestMonthEdition } from "#db/repos/month-edition-repo.ts";
import { readMonthReading } from "#db/repos/month-reading-repo.ts";
import { namesById } from "#db/repos/people-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { canonicalJson } from "#lib/canonical/canonical.ts";
import { monthChanges } from "#lib/month/changes/month-changes.ts";
import type { MonthFile } from "#lib/month/types.ts";
import { agree } from "#lib/plan/format.ts";
import type { Actor, Person } from "#lib/policy/can.ts";
import { fail, ok, type Result } from "#server/base/result.ts";
import { typedText } from "#server/base/typed-text.ts";
import type { Springline } from "#server/context/springline.ts";
import { announceMonthSigned, signedMonthView } from "#server/news/month-sign-news.ts";
import { acceptedInMonth, monthLookAgainLeft } from "./accept-in-month.ts";
import { monthBlockers } from "./month-blockers.ts";
import { type MonthNow, mayWithMonth, monthNow } from "./month-now.ts";
import { tellMonthSigned } from "./tell-signed.ts";

const NOTE_MAX = 4000;

export const signMonthSchema = z.strictObject({
  hash: z.string().regex(/^[0-9a-f]{64}$/, "Send the hash of the month that you read."),
  /** The number that the edition was to have when it was read. */
  edition: z.int().min(1),
  note: typedText.max(NOTE_MAX, `A note has at most ${NOTE_MAX} characters.`).optional(),
  /** How many *look again* findings the lead has said to leave open. A program that sends none is not asked. */
  leftOpen: z.int().min(0).optional(),
});
type SignMonthBody = z.infer<typeof signMonthSchema>;

/**
 * Errors: 401, 403, 404; 409 not-read, signed-meanwhile (`details.signed`), changed-since-read (`details.changes`), no-classes,
 * must-fix (`details.findings`), signed-already, left-open-changed; 409 or 503 when the document cannot be read.
 */
export function signMonth(
  app: Springline,
  actor: Actor,
  month: string,
  body: SignMonthBody,
): Result<{ edition: number; hash: string }> {
  const may = mayWithMonth(app, actor, month, "month.sign");
  if (!may.ok) return may;
  const { person } = may.value;
  const now = monthNow(app, month);
  if (!now.ok) return now;
  const refused = refusal(app, month, person, { now: now.value, body });
  if (refused) return refused;
  writeEdition(app, { month, person, now: now.value, body });
  announceMonthSigned(app, month);
  return ok({ edition: body.edition, hash: body.hash });
}

function refusal(
  app: Springline,
  month: string,
  person: Person,
  { now, body }: { readonly now: MonthNow; readonly body: SignMonthBody },
): Result<never> | null {
  const read = readMonthReading(app.db, month, person.id, body.hash);
  if (!read) return fail(409, "not-read", "You have not read this version of the month. Open its sign-off first.");
  const meanwhile = signedMeanwhile(app, month, body.edition);
  if (meanwhile) return meanwhile;
  if (now.hash !== body.hash) {
    const changes = monthChanges(JSON.parse(read.fileJson) as MonthFile, now.file); // written by the server
    const message = `The month has changed since you read it. ${changes.join(" ")} Read it again, then sign it as it is now.`;
    return fail(409, "changed-since-read", message, { hash: now.hash, changes });
  }
  const blockers = monthBlockers(app, month, now);
  const [first] = blockers;
  if (first) return fail(409, first.code, first.message, { ...Object(first.details), blockers });
  return leftOpenChanged(monthLookAgainLeft(app, month, now.findings).length, body.leftOpen);
}

function signedMeanwhile(app: Springline, month: string, edition: number): Result<never> | null {
  const newest = newestMonthEdition(app.db, month);
  if ((newest?.number ?? 0) + 1 === edition) return null;
  if (!newest) return fail(409, "not-read", "This month has no such edition yet. Open its sign-off first.");
  const signed = signedMonthView(newest, namesById(app.db));
  const message = `${signed.byName} signed this month meanwhile, as edition ${signed.number}. Read it again before you sign.`;
  return fail(409, "signed-meanwhile", message, { signed });
}

/** Findings are also as of the day and by what others accept, while the classes stay. */
function leftOpenChanged(open: number, said: number | undefined): Result<never> | null {
  if (said === undefined || open === said) return null;
  const message = `${agree(open, "One finding is", `${open} findings are`)} open now, not ${said}. Read the month again, then decide.`;
  return fail(409, "left-open-changed", message, { open });
}

interface Signing {
  readonly month: string;
  readonly person: Person;
  readonly now: MonthNow;
  readonly body: SignMonthBody;
}

function writeEdition(app: Springline, { month, person, now, body }: Signing): void {
  const edition = {
    month,
    number: body.edition,
    hash: now.hash,
    fileJson: now.json,
    findingsJson: canonicalJson(now.findings),
    acceptedJson: canonicalJson(acceptedInMonth(app, month, now.findings)),
    signedBy: person.id,
    signedAt: app.now(),
    note: body.note || null,
  };
  inTransaction(app.db, () => {
    insertMonthEdition(app.db, edition);
    tellMonthSigned(app, now.file, { month, edition: body.edition, byId: person.id });
  });
}
