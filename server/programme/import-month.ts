/** A month from a file, into an empty month or in the place of what is there; and classes from a spreadsheet's table. */
import { readMonthFile } from "#lib/month/file/read-month.ts";
import type { MonthFile } from "#lib/month/types.ts";
import { own } from "#lib/plan/lookup.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { boundedFile } from "#lib/programme/bounded-file.ts";
import { importMonth, isEmptyMonth } from "#lib/programme/import-file.ts";
import { matchMonthFile } from "#lib/programme/match-file.ts";
import { type MonthStudio, monthFileOf } from "#lib/programme/month-file.ts";
import { readMonthState } from "#lib/programme/read.ts";
import { CLOSE } from "#lib/protocol/close.ts";
import { fail, NO_RIGHT, NOT_FOUND, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import { monthDoc, unavailableReason } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { knownNow } from "./known-now.ts";
import { monthIsNear } from "./month-range.ts";
import { monthStudioOf } from "./read-month-file.ts";

type App = Pick<Springline, "db" | "documents" | "now" | "newId">;

export interface ImportedMonth {
  /** What was not found or not taken, in sentences. */
  readonly notes: readonly string[];
  /** The month as it was: brought in again, it takes the place of this one. */
  readonly before: MonthFile;
}

/** The right to write a month that exists. */
export function mayWriteMonth(app: Pick<App, "now">, actor: Actor, month: string): Result<{ readonly id: string }> {
  if (actor === null) return NOT_SIGNED_IN;
  if (actor.kind !== "person" || !can(actor, "programme.write")) return NO_RIGHT;
  return monthIsNear(month, app.now()) ? ok({ id: actor.id }) : NOT_FOUND;
}

/**
 * `replace`: whoever asks has seen that there is something. Errors: 400 not-a-month-file, with the place; 400 other-month; 401, 403, 404;
 * 409 month-not-empty; 409, 503 when the document cannot be written.
 */
export function importMonthFile(
  app: App,
  actor: Actor,
  month: string,
  given: { readonly text: string; readonly replace: boolean },
): Result<ImportedMonth> {
  const may = mayWriteMonth(app, actor, month);
  if (!may.ok) return may;
  const read = readMonthFile(given.text);
  if (!read.ok) return fail(400, "not-a-month-file", `This is not a month file. ${read.say}`);
  const { from, to } = read.month.dates;
  if (from.slice(0, 7) !== month || to.slice(0, 7) !== month)
    return fail(
      400,
      "other-month",
      `The file holds ${from} to ${to}, and this month is ${month}. Open the month that the file is of.`,
    );
  return writing(() =>
    app.documents.transact(monthDoc(month), may.value.id, (doc) => {
      if (!given.replace && !isEmptyMonth(doc)) return NOT_EMPTY;
      const state = readMonthState(doc);
      const studio = monthStudioOf(app, actor, month, state);
      const { file, notes } = matchMonthFile(read.month, studio);
      const bounded = boundedFile(file, app.now());
      importMonth(doc, bounded.file, hasOf(studio), knownNow(app, month));
      return ok({ notes: [...notes, ...bounded.notes], before: monthFileOf(state, studio) });
    }),
  );
}

const NOT_EMPTY = fail(
  409,
  "month-not-empty",
  "There are classes in this month already. Say that they are to be replaced, or choose another month.",
);

const hasOf = ({ rooms, coaches, plans }: MonthStudio) => ({
  room: (id: string) => own(rooms, id) !== undefined,
  coach: (id: string) => own(coaches, id) !== undefined,
  plan: (id: string) => own(plans, id) !== undefined && own(plans, id)?.known !== false,
});

/** Runs a write of a document. Errors: those of `write`, and 404, 409 or 503 when the document cannot be written. */
export function writing<T>(write: () => Result<T>): Result<T> {
  try {
    return write();
  } catch (error) {
    const reason = unavailableReason(error);
    if (reason === undefined) throw error;
    return fail(reason === "newerDocument" ? 409 : 503, `document-${reason}`, CLOSE[reason].text);
  }
}
