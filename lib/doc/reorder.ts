/** A whole block put into another order as one act, with as few items moved as can be. */
import { movedIds } from "#lib/plan/moved.ts";
import { orderedIds } from "./read.ts";
import { act, moveItem, type Writer } from "./write.ts";

/**
 * Puts items right behind `afterId` (null: at the top) in this order. The longest run that has its order already stays as
 * it stands, so that what others move meanwhile is disturbed as little as can be. Ids that are not there are passed over.
 */
export function reorderItems(w: Writer, afterId: string | null, ids: readonly string[]): void {
  const now = orderedIds(w.doc);
  const wanted = ids.filter((id) => now.includes(id));
  const moved = movedIds(now, wanted);
  if (moved.size === 0) return;
  act(w, () => {
    place(w, afterId, wanted, (id) => moved.has(id));
    // Two of them may hold equal keys, and nothing fits between those: then all get new ones.
    if (!stand(w, afterId, wanted)) place(w, afterId, wanted, () => true);
  });
}

function place(w: Writer, afterId: string | null, ids: readonly string[], moves: (id: string) => boolean): void {
  let above = afterId;
  for (const id of ids) {
    if (moves(id)) moveItem(w, id, above);
    above = id;
  }
}

function stand(w: Writer, afterId: string | null, ids: readonly string[]): boolean {
  const now = orderedIds(w.doc);
  const from = afterId === null ? 0 : now.indexOf(afterId) + 1;
  return ids.every((id, i) => now[from + i] === id);
}
