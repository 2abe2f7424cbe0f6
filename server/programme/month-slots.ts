/** The slots of a month, for commands that look at classes and not at the month itself. */
import type { Slot } from "#lib/programme/layout.ts";
import { readMonth } from "#lib/programme/read.ts";
import { monthDoc, unavailableReason } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";

/** Empty for a month that nobody has written in, or that cannot be read just now. */
export function slotsOfMonth(app: Pick<Springline, "documents">, month: string): readonly Slot[] {
  try {
    return app.documents.withDoc(monthDoc(month), (doc) => readMonth(doc).slots);
  } catch (error) {
    if (unavailableReason(error) === undefined) throw error;
    return [];
  }
}
