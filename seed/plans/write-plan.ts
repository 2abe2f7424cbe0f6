/** Writes a demo plan into its shared document in two parts, for two authors: the head and first items, then the rest. */
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
  "people",
] as const satisfies readonly HeadField[];

const writer = (doc: Y.Doc): Writer => ({ doc, origin: "demo" });

/** Writes the head, and the items up to `upTo` in place of the heading of a new plan. `now` in ms. */
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

/** Appends the items from `from` on. */
export function writeRest(doc: Y.Doc, plan: Plan, from: number): void {
  insertItems(writer(doc), orderedItems(doc).at(-1)?.id ?? null, plan.items.slice(from));
}
