/** Where an item that was taken out would stand: its order key is still on it. */
import * as Y from "yjs";
import { planParts } from "#lib/doc/layout.ts";
import { orderedItems } from "#lib/doc/read.ts";

/**
 * Id of the item before which it stood; null when it stood last. Undefined for an item that is not in the document.
 */
export function formerPlace(doc: Y.Doc, itemId: string): string | null | undefined {
  const map: unknown = planParts(doc).items.get(itemId);
  if (!(map instanceof Y.Map)) return undefined;
  const order: unknown = map.get("order");
  const after = (other: { readonly id: string; readonly order: string }) =>
    typeof order === "string" && (other.order > order || (other.order === order && other.id > itemId));
  return orderedItems(doc).find(after)?.id ?? null;
}
