/** An item that was taken out, by which page, and the words in it. */
import type * as Y from "yjs";
import type { PlanItem } from "#lib/plan/schema.ts";
import { planParts, UNDONE_CREATION } from "./layout.ts";
import { readItem } from "./read-item.ts";

export interface TakenOut {
  /** The item as it is now, including words that arrived later. */
  readonly item: PlanItem;
  /** Client id of the page that took it out. */
  readonly by: number;
  /** True where its creator undid its creation. */
  readonly undone: boolean;
}

/** Undefined for an item that is in the plan, or of a kind this version does not know. */
export function takenOut(doc: Y.Doc, id: string): TakenOut | undefined {
  const map = planParts(doc).items.get(id);
  const by = map && takenOutBy(map);
  const item = map && readItem(id, map);
  if (by === undefined || item === undefined) return undefined;
  return { item, by, undone: map?.get("deleted") === UNDONE_CREATION };
}

/**
 * Client id of the page that marked an entry as taken out, be it an item of a plan or a class of a month; undefined
 * while it is not taken out.
 */
export function takenOutBy(entry: Y.Map<unknown>): number | undefined {
  return entry.get("deleted") === undefined ? undefined : entry._map.get("deleted")?.id.client;
}
