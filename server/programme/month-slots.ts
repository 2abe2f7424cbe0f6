/** The classes and holidays of a month, for commands that look at those and not at the month itself. */
import type * as Y from "yjs";
import { monthParts, type Slot } from "#lib/programme/layout.ts";
import { readMonth } from "#lib/programme/read.ts";
import { readHolidays } from "#lib/programme/read-lists.ts";
import { monthDoc, unavailableReason } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";

type Months = Pick<Springline, "documents">;

export const slotsOfMonth = (app: Months, month: string): readonly Slot[] =>
  ofMonth(app, month, (doc) => readMonth(doc).slots);

/** 'YYYY-MM-DD' and name, in order. */
export const holidaysOfMonth = (app: Months, month: string): readonly (readonly [date: string, name: string])[] =>
  ofMonth(app, month, (doc) => Object.entries(readHolidays(monthParts(doc))));

/** Empty for a month that nobody has written in, or that cannot be read just now. */
function ofMonth<T>(app: Months, month: string, read: (doc: Y.Doc) => readonly T[]): readonly T[] {
  try {
    return app.documents.withDoc(monthDoc(month), read);
  } catch (error) {
    if (unavailableReason(error) === undefined) throw error;
    return [];
  }
}
