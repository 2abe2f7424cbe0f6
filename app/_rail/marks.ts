/** How many findings and open threads each item has, for screens without room for the margin. */
import type { SessionSnapshot } from "../_session/session-types.ts";
import type { ItemMarks } from "./item-on-rail.tsx";

const NONE: ItemMarks = { must: 0, look: 0, threads: 0 };

export function marksOf(snap: SessionSnapshot): ReadonlyMap<string, ItemMarks> {
  const marks = new Map<string, ItemMarks>();
  const add = (id: string, part: Partial<ItemMarks>) => marks.set(id, { ...(marks.get(id) ?? NONE), ...part });
  for (const finding of snap.findings) {
    const [id] = finding.items;
    if (id === undefined || finding.level === "info") continue;
    add(id, { [finding.level]: (marks.get(id) ?? NONE)[finding.level] + 1 });
  }
  for (const { anchor, settled } of snap.threads) {
    if (!settled && anchor.kind !== "plan") {
      add(anchor.itemId, { threads: (marks.get(anchor.itemId) ?? NONE).threads + 1 });
    }
  }
  return marks;
}
