/** What was taken out, by which page, and the words that stay with it. */
import type * as Y from "yjs";
import type { PlanItem } from "#lib/plan/schema.ts";
import { planParts, UNDONE_CREATION } from "./layout.ts";
import { readItem } from "./read-item.ts";

export interface TakenOut {
  /** As it is now: words that come in later are in it. */
  readonly item: PlanItem;
  /** Client id of the page that took it out. */
  readonly by: number;
  /** It was an undo of its making. */
  readonly undone: boolean;
}

/** Undefined for an item that lives, or of a kind this version does not know. */
export function takenOut(doc: Y.Doc, id: string): TakenOut | undefined {
  const map = planParts(doc).items.get(id);
  const by = map && takenOutBy(map);
  const item = map && readItem(id, map);
  if (by === undefined || item === undefined) return undefined;
  return { item, by, undone: map?.get("deleted") === UNDONE_CREATION };
}

/** Which page set the mark of what is taken out, be it an item of a plan or a class of a month; undefined while it lives. */
export function takenOutBy(entry: Y.Map<unknown>): number | undefined {
  return entry.get("deleted") === undefined ? undefined : entry._map.get("deleted")?.id.client;
}
