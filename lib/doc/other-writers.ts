/** Who has written in an item, for cases where one person's undo must not hide what another wrote. */
import * as Y from "yjs";
import type { ItemMap } from "./layout.ts";

/** Whether anything not deleted in the item was written by a page other than the one that made it. */
export function othersWroteIn(map: ItemMap): boolean {
  const maker = map._item?.id.client;
  return maker === undefined || hasForeignPart(map, maker);
}

// biome-ignore lint/suspicious/noExplicitAny: yjs types every shared type's events differently, and none matter here
function hasForeignPart(type: Y.AbstractType<any>, self: number): boolean {
  const firsts: (Y.Item | null)[] = [type._start, ...type._map.values()];
  for (const first of firsts) {
    for (let item = first; item !== null; item = item.right) {
      if (item.deleted) continue;
      if (item.id.client !== self) return true;
      if (item.content instanceof Y.ContentType && hasForeignPart(item.content.type, self)) return true;
    }
  }
  return false;
}
