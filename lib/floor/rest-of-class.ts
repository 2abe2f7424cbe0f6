/** What is left of a class at a moment: the work still to do with its bounds, and the seconds that cannot change. */
import { classClock } from "#lib/clock/clock.ts";
import { headSeconds, moveOf, sidePairs } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { retimedPlan } from "./retimed-plan.ts";

export interface RestItem {
  readonly id: string;
  /** Place among the items of the plan. */
  readonly place: number;
  /** As planned now. */
  readonly seconds: number;
  readonly locked: boolean;
  readonly shortest: number;
  readonly longest: number;
  /** Seconds of it already done: above 0 only for the current move. */
  readonly doneSeconds: number;
  readonly begun: boolean;
  readonly otherSide: { readonly id: string; readonly seconds: number; readonly done: boolean } | null;
}
export interface RestOfClass {
  readonly items: readonly RestItem[];
  /** Changes, pauses and the opening still to come, and the closing. */
  readonly fixedSeconds: number;
  readonly closingSeconds: number;
}

/** The current move is never cut off: it keeps at least its count-in from now. */
export function restOfClass(plan: Plan, position: number, dropped: ReadonlySet<string>): RestOfClass {
  const closingSeconds = headSeconds(plan, "closingSeconds");
  const kept = retimedPlan(plan, { changed: [], dropped: [...dropped], closingSeconds });
  const { rows, total } = classClock(kept);
  const places = new Map(plan.items.map((item, place) => [item.id, place]));
  const others = otherSides(plan);
  const ends = new Map(rows.map((row) => [row.item, row.end]));
  const items: RestItem[] = [];
  let work = 0;
  for (const [n, item] of kept.items.entries()) {
    const row = rows[n];
    if (item.kind !== "move" || !row || row.end <= position) continue;
    const doneSeconds = Math.max(0, position - row.start);
    work += row.end - row.start - doneSeconds;
    const other = others.get(item.id);
    const [shortest, longest] = boundsOf(kept, item);
    const least = doneSeconds > 0 ? doneSeconds + headSeconds(kept, "countInSeconds") : 0;
    items.push({
      id: item.id,
      place: places.get(item.id) ?? -1,
      seconds: item.seconds,
      locked: item.locked === true,
      shortest: Math.max(shortest, least),
      // What the coach has just added by hand may stay, even above the longest time.
      longest: Math.max(longest, shortest, least, doneSeconds > 0 ? item.seconds : 0),
      doneSeconds,
      begun: doneSeconds > 0,
      otherSide: other ? { id: other.id, seconds: other.seconds, done: (ends.get(other.id) ?? 0) <= position } : null,
    });
  }
  const ahead = Math.max(0, total - Math.min(position, total));
  return { items, fixedSeconds: ahead - work, closingSeconds };
}

/** The item's own range, else its move's, else half to one and a half times what is planned. Seconds. */
function boundsOf(plan: Plan, item: MoveItem): readonly [number, number] {
  return item.range ?? moveOf(plan, item)?.seconds ?? [item.seconds / 2, item.seconds * 1.5];
}

/** From item id to its other side. */
export function otherSides(plan: Plan): Map<string, MoveItem> {
  return new Map(
    sidePairs(plan).flatMap(({ left, right }): [string, MoveItem][] =>
      left && right
        ? [
            [left.id, right],
            [right.id, left],
          ]
        : [],
    ),
  );
}
