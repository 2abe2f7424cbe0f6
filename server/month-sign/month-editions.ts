/** The signed editions of a month, each as one reader may know it, and any two compared. */
import { listMonthEditions, type MonthEditionRow, readMonthEdition } from "#db/repos/month-edition-repo.ts";
import { namesById } from "#db/repos/people-repo.ts";
import { readPlanRows } from "#db/repos/plan-repo.ts";
import { monthAsSigned } from "#lib/month/changes/as-signed.ts";
import { monthChanges } from "#lib/month/changes/month-changes.ts";
import { type ChangedSlot, slotChanges, withinMonth } from "#lib/month/changes/slot-changes.ts";
import type { MonthFile, MonthFinding, MonthPlan } from "#lib/month/types.ts";
import { type Actor, can, canPlan, canReadEditions } from "#lib/policy/can.ts";
import type { AcceptanceView, SignedMonth } from "#lib/protocol/messages.ts";
import { fail, NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { signedMonthFile } from "#server/month-facts/signed-month-file.ts";
import { signedMonthView } from "#server/news/month-sign-news.ts";
import { readMonthFileOf } from "#server/programme/read-month-file.ts";
import { mayWithMonth } from "./month-now.ts";

type App = Pick<Springline, "db" | "documents" | "now" | "newId">;

const DAMAGED = fail(
  409,
  "damaged-edition",
  "What is stored of this edition is no longer what was signed. Ask a manager to have the record proved.",
);

/** In the order of signing. Errors: 401, 403, 404. */
export function readMonthEditions(app: App, actor: Actor, month: string): Result<{ editions: SignedMonth[] }> {
  const may = mayWithMonth(app, actor, month, "programme.read");
  if (!may.ok) return may;
  const names = namesById(app.db);
  return ok({ editions: listMonthEditions(app.db, month).map((row) => signedMonthView(row, names)) });
}

export interface SignedMonthWhole extends SignedMonth {
  /** False where plans are left out that the reader may not know: then its hash is another than the signed one. */
  readonly whole: boolean;
  readonly file: MonthFile;
  /** Empty where the file is not whole: their sentences name plans. */
  readonly findings: readonly MonthFinding[];
  readonly accepted: readonly AcceptanceView[];
}

/** Errors: 401, 403, 404; 409 damaged-edition. */
export function readSignedMonth(app: App, actor: Actor, month: string, number: number): Result<SignedMonthWhole> {
  const may = mayWithMonth(app, actor, month, "programme.read");
  if (!may.ok) return may;
  const row = readMonthEdition(app.db, month, number);
  if (!row) return NOT_FOUND;
  const signed = signedMonthFile(row);
  if (!signed) return DAMAGED;
  const file = knownTo(app, actor, signed);
  const whole = file === signed;
  return ok({
    ...signedMonthView(row, namesById(app.db)),
    whole,
    file,
    findings: whole ? (JSON.parse(row.findingsJson) as MonthFinding[]) : [], // written by the server, as are the others
    accepted: whole ? (JSON.parse(row.acceptedJson) as AcceptanceView[]) : [],
  });
}

/** A signed month as one reader may know it; undefined when there is none or it is damaged. */
export function signedMonthAs(app: App, actor: Actor, row: MonthEditionRow | undefined): MonthFile | undefined {
  const file = signedMonthFile(row);
  return file && knownTo(app, actor, file);
}

export interface ComparedMonths {
  /** Class by class, of the days of the month itself. */
  readonly slots: readonly ChangedSlot[];
  /** All that changed, in sentences. */
  readonly sentences: readonly string[];
}

/** `to`: null for the month as it is now. Errors: 401, 403, 404; 409 damaged-edition; 409 or 503 for an unreadable document. */
export function compareMonthEditions(
  app: App,
  actor: Actor,
  month: string,
  { from, to }: { readonly from: number; readonly to: number | null },
): Result<ComparedMonths> {
  const before = readSignedMonth(app, actor, month, from);
  if (!before.ok) return before;
  const after = to === null ? readMonthFileOf(app, actor, month) : readSignedMonth(app, actor, month, to);
  if (!after.ok) return after;
  const [was, now] = [before.value.file, "file" in after.value ? after.value.file : monthAsSigned(after.value)];
  return ok({ slots: withinMonth(slotChanges(was, now), now.dates), sentences: monthChanges(was, now) });
}

/** The same file for who may know all of its plans. */
function knownTo(app: App, actor: Actor, file: MonthFile): MonthFile {
  const rows = new Map(readPlanRows(app.db, Object.keys(file.plans)).map((row) => [row.id, row]));
  const known = ([id, plan]: [string, MonthPlan]): boolean => {
    const row = rows.get(id);
    if (plan.known === false) return true;
    // One without a row came with a file and was never a plan of the studio.
    if (!row) return can(actor, "month.sign");
    return canPlan(actor, "plan.read", row) || (plan.signed && canReadEditions(actor, row));
  };
  const entries = Object.entries(file.plans);
  if (entries.every(known)) return file;
  const hidden: MonthPlan = { title: "", known: false };
  return { ...file, plans: Object.fromEntries(entries.map(([id, plan]) => [id, known([id, plan]) ? plan : hidden])) };
}
