/** Puts a whole block into another order as one act, moving as few items as possible. */
import { movedIds } from "#lib/plan/moved.ts";
import { orderedIds } from "./read.ts";
import { act, moveItem, type Writer } from "./write.ts";

/**
 * Puts items right after `afterId` (null: at the top) in this order. The longest run already in order stays where it
 * is, which disturbs other people's moves as little as possible. Unknown ids are skipped.
 */
export function reorderItems(w: Writer, afterId: string | null, ids: readonly string[]): void {
  const now = orderedIds(w.doc);
  const wanted = ids.filter((id) => now.includes(id));
  const moved = movedIds(now, wanted);
  if (moved.size === 0) return;
  act(w, () => {
    place(w, afterId, wanted, (id) => moved.has(id));
    // Two of them may hold equal keys, and nothing fits between those, so all get new ones.
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
