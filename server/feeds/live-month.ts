/** A month as it stands, as whoever stands behind an address may read it. */
import type { FeedRow } from "#db/repos/calendar-feed-repo.ts";
import { readPerson } from "#db/repos/people-repo.ts";
import type { ToldNumber } from "#lib/month/ics/promised.ts";
import type { MonthFile } from "#lib/month/types.ts";
import type { Person } from "#lib/policy/can.ts";
import { createMonthDoc } from "#lib/programme/create.ts";
import { monthFileOf, toldNumbers } from "#lib/programme/month-file.ts";
import { readMonthState } from "#lib/programme/read.ts";
import { ok, type Result } from "#server/base/result.ts";
import { monthDoc } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { monthStateOf, monthStudioOf, readMonthFileOf } from "#server/programme/read-month-file.ts";

type App = Pick<Springline, "db" | "documents" | "now" | "newId">;

/** The coach whose classes they are, or the manager who made the address. What they may not read is not in the calendar. */
export function feedReader({ db }: Pick<App, "db">, { kind, subject, madeBy }: FeedRow): Person {
  const id = kind === "coach" ? subject : madeBy;
  return { kind: "person", id, roles: readPerson(db, id)?.roles ?? [] };
}

export interface LiveMonth {
  readonly file: MonthFile;
  readonly numbers: Readonly<Record<string, ToldNumber>>;
}

/** Empty for a month that nobody has opened yet. Errors: 409, 503 for one that cannot be read just now. */
export function liveMonth(app: App, reader: Person, month: string): Result<LiveMonth> {
  const opened = app.documents.generation(monthDoc(month)) !== undefined;
  const read = opened ? monthStateOf(app, month) : ok(readMonthState(createMonthDoc(month)));
  if (!read.ok) return read;
  const state = read.value;
  const file = opened
    ? readMonthFileOf(app, reader, month)
    : ok(monthFileOf(state, monthStudioOf(app, reader, month, state)));
  return file.ok ? ok({ file: file.value, numbers: toldNumbers(state) }) : file;
}
