/** A month as a spreadsheet's table, and classes from one. */
import type { ById, MonthFile } from "#lib/month/types.ts";
import type { Actor } from "#lib/policy/can.ts";
import { type CsvClass, type NamesKnown, readMonthCsv } from "#lib/programme/csv-in.ts";
import { monthToCsv } from "#lib/programme/csv-out.ts";
import { monthFileOf } from "#lib/programme/month-file.ts";
import { monthClasses, readMonthState } from "#lib/programme/read.ts";
import { addSlot } from "#lib/programme/write.ts";
import { addRegulars, themeNamed } from "#lib/programme/write-lists.ts";
import { fail, ok, type Result } from "#server/base/result.ts";
import { monthDoc } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { mayWriteMonth, writing } from "./import-month.ts";
import { monthStudioOf, readMonthFileOf } from "./read-month-file.ts";

type App = Pick<Springline, "db" | "documents" | "now" | "newId">;

export function readMonthTable(app: App, actor: Actor, month: string): Result<{ text: string; fileName: string }> {
  const file = readMonthFileOf(app, actor, month);
  return file.ok ? ok({ text: monthToCsv(file.value), fileName: `month-${month}.csv` }) : file;
}

export interface ImportedTable {
  readonly added: number;
  /** Lines whose class stands in the month already. */
  readonly there: number;
  readonly notes: readonly string[];
}

type Writer = Parameters<typeof addSlot>[0];

/** Adds the classes of a table; one that is there already is left as it is. Errors: 400 not-a-table with a sentence a line. */
export function importMonthTable(app: App, actor: Actor, month: string, text: string): Result<ImportedTable> {
  const may = mayWriteMonth(app, actor, month);
  if (!may.ok) return may;
  return writing(() =>
    app.documents.transact(monthDoc(month), may.value.id, (doc) => {
      const file = monthFileOf(readMonthState(doc), monthStudioOf(app, actor, month, readMonthState(doc)));
      const read = readMonthCsv(text, month, namesIn(file));
      if (!read.ok) return fail(400, "not-a-table", `Nothing was taken. ${read.say.join(" ")}`, read.say);
      const w = { doc, origin: "server" };
      const known = monthClasses(readMonthState(doc)).map((slot) => placeOf(slot));
      const fresh = read.classes.filter((one) => !known.includes(placeOf(one)));
      const ids = new Map<string, string>();
      for (const one of fresh) addSlot(w, { ...completed(w, one, ids, app), id: app.newId() }, app.now());
      return ok({ added: fresh.length, there: read.classes.length - fresh.length, notes: read.notes });
    }),
  );
}

const placeOf = ({ date, start, minutes, room }: Pick<CsvClass, "date" | "start" | "minutes" | "room">): string =>
  [date, start, minutes, room ?? ""].join(" ");

/** Makes the themes and groups of regulars that the table names and the month does not have. */
function completed(w: Writer, one: CsvClass, ids: Map<string, string>, app: Pick<App, "newId">) {
  const { newTheme, newRegulars = [], ...slot } = one;
  const theme = newTheme === undefined ? (slot.theme ?? null) : themeNamed(w, newTheme);
  const made = newRegulars.map((name) => {
    const id = ids.get(name.toLowerCase()) ?? app.newId();
    ids.set(name.toLowerCase(), id);
    addRegulars(w, id, { name });
    return id;
  });
  const regulars = [...(slot.regulars ?? []), ...made];
  return { ...slot, ...(theme === null ? {} : { theme }), ...(regulars.length > 0 ? { regulars } : {}) };
}

function namesIn({ rooms, coaches, themes, plans, regulars }: MonthFile): NamesKnown {
  const names = (map: ById<{ readonly name: string }> | undefined) =>
    byName(Object.entries(map ?? {}).map(([id, { name }]) => [id, name]));
  return {
    room: names(rooms),
    coach: names(coaches),
    theme: names(themes),
    regulars: names(regulars),
    plan: byName(Object.entries(plans).map(([id, { title }]) => [id, title])),
  };
}

/** A name that two have names neither; an id names its own. */
function byName(entries: readonly (readonly [id: string, name: string])[]): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  const twice = new Set<string>();
  for (const [id, name] of entries) {
    const key = name.trim().toLowerCase();
    if (found.has(key)) twice.add(key);
    found.set(key, id);
  }
  for (const key of ["", ...twice]) found.delete(key);
  return found;
}
