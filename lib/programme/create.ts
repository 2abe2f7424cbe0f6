/** New month documents. Only the server calls this, once per month, and stores the update bytes. */
import * as Y from "yjs";
import { MONTH_DOC_VERSION, monthParts } from "./layout.ts";
import { type MonthContent, writeContent } from "./write-content.ts";

/** A document for `month` ('YYYY-MM') with this in it. `now` in ms since the epoch: when its classes were added; 0 for long ago. */
export function createMonthDoc(month: string, content: MonthContent = {}, now = 0): Y.Doc {
  const doc = new Y.Doc();
  doc.transact(() => {
    const { meta } = monthParts(doc);
    meta.set("version", MONTH_DOC_VERSION);
    meta.set("month", month);
    writeContent(doc, content, now);
  });
  return doc;
}
