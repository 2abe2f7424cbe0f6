/** What the look at changed classes is told of them: who set what, and how they were signed. A key is the month and the class's id. */
import type * as Y from "yjs";
import { readDocClients } from "#db/repos/doc-client-repo.ts";
import { newestMonthEdition } from "#db/repos/month-edition-repo.ts";
import { perValue } from "#lib/memo/per-value.ts";
import { expandMonth } from "#lib/month/expand.ts";
import type { MonthFile, MonthSlot } from "#lib/month/types.ts";
import type { ClassFacts, ClassPart } from "#lib/notices/class-changes.ts";
import { type ClassWriters, classWriters } from "#lib/programme/class-writers.ts";
import { formatDocName } from "#lib/protocol/messages.ts";
import { monthDoc } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { signedMonthFile } from "#server/month-facts/signed-month-file.ts";

type App = Pick<Springline, "db" | "documents">;

export interface EditedMonth {
  readonly month: string;
  /** The live document, all of it on disk. */
  readonly doc: Y.Doc;
}

export const monthOfKey = (key: string): string => key.slice(0, key.indexOf("/"));
export const slotOfKey = (key: string): string => key.slice(key.indexOf("/") + 1);
export const docNameOf = (month: string): string => formatDocName(monthDoc(month));

/** Each class is looked up once, and only if it has changed. */
export function authorsOf(
  app: App,
  edited: EditedMonth | undefined,
): (key: string, part: ClassPart) => string | undefined {
  const classes = new Map<string, ClassWriters>();
  const people = new Map<string, ReadonlyMap<number, string>>();
  const writersIn = (key: string, month: string): ClassWriters => {
    const slot = slotOfKey(key);
    const read = (doc: Y.Doc) => classWriters(doc, slot);
    return edited?.month === month ? read(edited.doc) : app.documents.withDoc(monthDoc(month), read);
  };
  return (key, part) => {
    const month = monthOfKey(key);
    const writers = classes.get(key) ?? writersIn(key, month);
    classes.set(key, writers);
    const known = people.get(month) ?? peopleOf(app, month);
    people.set(month, known);
    return known.get(writers[part] ?? -1);
  };
}

const peopleOf = ({ db }: App, month: string): ReadonlyMap<number, string> =>
  new Map(readDocClients(db, docNameOf(month)).map(({ clientId, userId }) => [clientId, userId]));

/** As each of these months was signed last, by key. */
export function signedOf(app: App, months: Iterable<string>): ReadonlyMap<string, ClassFacts> {
  const all = new Map<string, ClassFacts>();
  for (const month of months) for (const [id, facts] of signedClasses(app, month)) all.set(`${month}/${id}`, facts);
  return all;
}

const NO_CLASSES: ReadonlyMap<string, ClassFacts> = new Map();

function signedClasses({ db }: App, month: string): ReadonlyMap<string, ClassFacts> {
  const file = signedMonthFile(newestMonthEdition(db, month));
  return file ? classesOf(file) : NO_CLASSES;
}

const classesOf: (file: MonthFile) => ReadonlyMap<string, ClassFacts> = perValue(
  (file) => new Map(expandMonth(file).map((slot) => [slot.id, plannedBy(slot)])),
);

export const plannedBy = ({ date, start, minutes, room, coach, out }: MonthSlot): ClassFacts => ({
  date,
  start,
  minutes,
  room: room ?? null,
  coach: coach ?? null,
  out: out === true,
});
