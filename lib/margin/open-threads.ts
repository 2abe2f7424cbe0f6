/** How many threads are open about each item: what its plate shows of them while it is closed. */
import type { ThreadView } from "#lib/protocol/messages.ts";
import { itemOfAnchor } from "./anchor-item.ts";

/** By item id; items without an open thread, and threads about the class, are left out. */
export function openThreadsByItem(
  threads: readonly Pick<ThreadView, "anchor" | "settled">[],
): Readonly<Record<string, number>> {
  const counts: Record<string, number> = {};
  for (const { anchor, settled } of threads) {
    const id = itemOfAnchor(anchor);
    if (!settled && id !== null) counts[id] = (counts[id] ?? 0) + 1;
  }
  return counts;
}
