/** Writes a demo plan into its shared document as two people would: the head and the first items, then the rest. */
import type * as Y from "yjs";
import { planParts } from "#lib/doc/layout.ts";
import { orderedItems } from "#lib/doc/read.ts";
import {
  act,
  deleteItem,
  type HeadField,
  insertItems,
  setExpected,
  setHead,
  setText,
  setThemeShare,
  type Writer,
} from "#lib/doc/write.ts";
import { GROUPS, type Plan } from "#lib/plan/schema.ts";

const HEAD_FIELDS = [
  "lengthSeconds",
  "level",
  "openingSeconds",
  "closingSeconds",
  "headsUpSeconds",
  "countInSeconds",
  "gridSeconds",
] as const satisfies readonly HeadField[];

const writer = (doc: Y.Doc): Writer => ({ doc, origin: "demo" });

/** The head, and the items up to `upTo` in place of the heading that a new plan comes with. `now` in ms. */
export function writeBeginning(doc: Y.Doc, plan: Plan, upTo: number, now: number): void {
  const w = writer(doc);
  act(w, () => {
    for (const item of orderedItems(doc)) deleteItem(w, item.id, now);
    for (const field of HEAD_FIELDS) setHead(w, field, plan[field]);
    if (plan.theme) setText(w, planParts(doc).theme, plan.theme.name);
    for (const group of GROUPS) setThemeShare(w, group, plan.theme?.shares?.[group]);
    plan.expected?.forEach((caution, rank) => {
      setExpected(w, caution, true, rank);
    });
    if (plan.notes) setText(w, planParts(doc).notes, plan.notes);
    insertItems(w, null, plan.items.slice(0, upTo));
  });
}

/** The items from `from` on, after the last one there is. */
export function writeRest(doc: Y.Doc, plan: Plan, from: number): void {
  insertItems(writer(doc), orderedItems(doc).at(-1)?.id ?? null, plan.items.slice(from));
}
