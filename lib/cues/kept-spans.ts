/**
 * Spans placed lately. A plan is checked at every key press, and all of its spans but one or two are as they were: each is
 * known by everything that its placing looks at, so what is kept is what would be worked out again.
 */
import { own } from "#lib/plan/lookup.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import type { PlacedSpan } from "./place-span.ts";
import type { Placed } from "./windows.ts";

const kept = new Map<string, PlacedSpan>();
const MOST_KEPT = 600;
/** A span with more to know it by is worked out each time, so that what is kept stays below some megabytes. */
const LONGEST_KEY = 12_000;

/** The kept span of that key, else the one that `place` gives. */
export function keptSpan(key: string, place: () => PlacedSpan): PlacedSpan {
  const known = kept.get(key);
  if (known) return known;
  const placed = place();
  if (key.length > LONGEST_KEY) return placed;
  if (kept.size >= MOST_KEPT) dropOldest();
  kept.set(key, placed);
  return placed;
}

/** Half of them at once: one at a time would cost a little at every key press. */
function dropOldest(): void {
  let left = MOST_KEPT / 2;
  for (const key of kept.keys()) {
    if (left-- <= 0) return;
    kept.delete(key);
  }
}

export const forgetSpans = (): void => kept.clear();

/** Makes the keys of a plan's spans. `total` counts only where a line says the minutes left. */
export function spanKeys(plan: Plan, total: number) {
  const { speech, headsUpSeconds, countInSeconds, equipment } = plan;
  const shared = JSON.stringify([speech, headsUpSeconds, countInSeconds, equipment]);
  const items = new Map(plan.items.map((item) => [item, JSON.stringify(item)]));
  const moves = new Map<string, string>();
  const moveKey = (id: string): string => {
    const known = moves.get(id) ?? `${JSON.stringify(own(plan.moves, id))}`;
    moves.set(id, known);
    return known;
  };
  const itemKey = (item: PlanItem | undefined): string =>
    item ? `${items.get(item)}${item.kind === "move" ? moveKey(item.move) : ""}` : "";
  const placedKey = (placed: Placed | undefined): string =>
    placed ? `${itemKey(placed.item)}${placed.row.transitionFrom},${placed.row.start},${placed.row.end}` : "";
  return (work: Placed | undefined, next: Placed | undefined, after: Placed | undefined): string => {
    const called = work ? firstTimedAfter(plan.items, work.item.id) : undefined;
    const other = called === next?.item ? "" : itemKey(called);
    const name = after ? `${after.item.move} ${moveKey(after.item.move)}` : "";
    const key = [shared, placedKey(work), other, placedKey(next), name].join("\n");
    return key.includes("{minutes-left}") ? `${key}\n${total}` : key;
  };
}

/** What the heads-up of an item calls. */
function firstTimedAfter(items: readonly PlanItem[], id: string): PlanItem | undefined {
  const at = items.findIndex((item) => item.id === id);
  return items.find((item, place) => place > at && item.kind !== "heading");
}
