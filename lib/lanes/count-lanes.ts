/** Findings, threads and people present, as marks over their item; those of the whole class stand over its first column. */
import { itemOfAnchor } from "#lib/margin/anchor-item.ts";
import { plural } from "#lib/plan/format.ts";
import { followingEach } from "#lib/plan/lookup.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import type { ThreadView } from "#lib/protocol/messages.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { levelCounts } from "#lib/rules/level-words.ts";
import { cellOf, type PlacedColumn } from "./columns.ts";
import type { FoundCell, Lane, PresentCell, ThreadsCell } from "./types.ts";

/** A finding is marked at its first item, as on the rail; one about a heading at the first column under it. */
export function foundLane(plan: Plan, placed: readonly PlacedColumn[], findings: readonly Finding[]): Lane {
  const under = new Map(followingEach(plan.items, takesTime).map((next, n) => [plan.items[n]?.id, next?.id]));
  const headings = new Set(plan.items.flatMap(({ id, kind }) => (kind === "heading" ? [id] : [])));
  const at = byColumn(placed, findings, ({ items: [id] }) =>
    id !== undefined && headings.has(id) ? (under.get(id) ?? id) : id,
  );
  const cells = placed.flatMap((p): FoundCell[] => {
    const here = at.get(p.column.key);
    if (!here) return [];
    const counts = { must: 0, look: 0, info: 0 };
    for (const { level, n } of levelCounts(here)) counts[level] = n;
    return [{ ...cellOf(p, foundWords(here, p)), ...counts }];
  });
  return { id: "found", kind: "found", name: "Found", cells };
}

const takesTime = (item: PlanItem): item is Exclude<PlanItem, { kind: "heading" }> => item.kind !== "heading";

function foundWords(here: readonly Finding[], { column }: PlacedColumn): string {
  const about = column.item === null ? ", about the whole class" : "";
  return `found: ${levelCounts(here)
    .map(({ words }) => words)
    .join(", ")}${about}`;
}

export function threadsLane(placed: readonly PlacedColumn[], threads: readonly ThreadView[]): Lane {
  const open = threads.filter((thread) => !thread.settled);
  const at = byColumn(placed, open, ({ anchor }) => itemOfAnchor(anchor) ?? undefined);
  const cells = placed.flatMap((p): ThreadsCell[] => {
    const n = at.get(p.column.key)?.length ?? 0;
    const about = p.column.item === null ? ", about the whole class" : "";
    return n === 0 ? [] : [{ ...cellOf(p, `${plural(n, "open thread")}${about}`), threads: n }];
  });
  return { id: "threads", kind: "threads", name: "Threads", cells };
}

/** Other people by their current item. People on a heading or on no item are left out. */
export function presentLane(placed: readonly PlacedColumn[], present: readonly PersonOnItem[]): Lane {
  const at = byColumn(placed, present, ({ itemId }) => itemId);
  const cells = placed.flatMap((p): PresentCell[] => {
    const people = [...new Set((at.get(p.column.key) ?? []).map(({ name }) => name))];
    return people.length === 0 ? [] : [{ ...cellOf(p, `here: ${people.join(", ")}`), people }];
  });
  return { id: "present", kind: "present", name: "Here now", cells };
}

export interface PersonOnItem {
  readonly name: string;
  readonly itemId: string;
}

/** Groups things by column: their item's, or the first one when they have no item. Headings have no column. */
function byColumn<T>(
  placed: readonly PlacedColumn[],
  things: readonly T[],
  itemOf: (thing: T) => string | undefined,
): Map<string, T[]> {
  const known = new Set(placed.map((p) => p.column.key));
  const first = placed[0]?.column.key;
  const map = new Map<string, T[]>();
  for (const thing of things) {
    const item = itemOf(thing);
    const key = item !== undefined && known.has(item) ? item : item === undefined ? first : undefined;
    if (key !== undefined) map.set(key, [...(map.get(key) ?? []), thing]);
  }
  return map;
}
