/**
 * Spans placed lately. A plan is checked at every key press, and all of its spans but one or two are as they were: each is
 * known by everything that its placing looks at, so what is kept is what would be worked out again.
 */
import { own } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import type { PlacedSpan } from "./place-span.ts";
import type { Placed } from "./windows.ts";

const MOST_KEPT = 1200;
/** Longer contents, and spans with them, are not kept, so that all of it stays below some megabytes. */
const LONGEST_CONTENT = 8000;

/** Contents of items and moves, each by a number of its own that is never given again. */
const numbers = new Map<string, number>();
const kept = new Map<string, PlacedSpan>();
let given = 0;

export function forgetSpans(): void {
  numbers.clear();
  kept.clear();
}

/** The number of a content; null for one that is too long to keep. */
function numberOf(text: string): number | null {
  const known = numbers.get(text);
  if (known !== undefined) return known;
  if (text.length > LONGEST_CONTENT) return null;
  if (numbers.size >= MOST_KEPT) numbers.clear();
  given++;
  numbers.set(text, given);
  return given;
}

/** The kept span of that key, else the one that `place` gives. Without a key it is placed each time. */
export function keptSpan(key: string | null, place: () => PlacedSpan): PlacedSpan {
  const known = key === null ? undefined : kept.get(key);
  if (known) return known;
  const placed = place();
  if (key === null) return placed;
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(key, placed);
  return placed;
}

interface Neighbours {
  readonly work: Placed | undefined;
  readonly next: Placed | undefined;
  readonly after: Placed | undefined;
}

/** Makes the keys of a plan's spans; null where something in a span is too long to keep. */
export function spanKeys(plan: Plan, total: number): (span: Neighbours) => string | null {
  const { speech, headsUpSeconds, countInSeconds, equipment } = plan;
  const shared = numberOf(JSON.stringify([speech, headsUpSeconds, countInSeconds, equipment]));
  const moves = new Map<string, number | null>();
  const moveNumber = (id: string): number | null => {
    const known = moves.get(id);
    if (known !== undefined) return known;
    const number = numberOf(JSON.stringify([id, own(plan.moves, id)]));
    moves.set(id, number);
    return number;
  };
  const partsOf = (item: PlanItem | undefined): readonly (number | null)[] => {
    if (!item) return NONE;
    if (item.kind !== "move") return [numberOf(JSON.stringify(item))];
    // The minutes left are those of the class, whatever the item.
    const content = contentOf(item);
    const said = content.includes("{minutes-left}") ? `${content} ${total}` : content;
    return [numberOf(said), moveNumber(item.move)];
  };
  const items = new Map(plan.items.map((item) => [item, partsOf(item)]));
  const itemParts = (item: PlanItem | undefined) => (item && items.get(item)) ?? NONE;
  return ({ work, next, after }) => {
    const called = work ? firstTimedAfter(plan.items, work.item.id) : undefined;
    const name = after ? [moveNumber(after.item.move)] : NONE;
    const parts = [
      [shared],
      itemParts(work?.item),
      itemParts(called === next?.item ? undefined : called),
      itemParts(next?.item),
      name,
    ];
    return parts.some((part) => part.includes(null)) ? null : [...parts, timesOf(work), timesOf(next)].join("|");
  };
}

const NONE: readonly (number | null)[] = [];

/** All that a placing looks at in an item but its times. Put together by hand: this is most of what a kept track costs. */
function contentOf({ id, side, springs, offsetMm, facing, script = [] }: MoveItem): string {
  let content = `${id} ${side} ${offsetMm} ${facing} ${JSON.stringify(springs)}`;
  for (const { kind, text } of script) content += ` ${kind} ${text.length} ${text}`;
  return content;
}

const timesOf = (placed: Placed | undefined): string =>
  placed ? [placed.row.transitionFrom, placed.row.start, placed.row.end].join() : "";

/** What the heads-up of an item calls. */
function firstTimedAfter(items: readonly PlanItem[], id: string): PlanItem | undefined {
  const at = items.findIndex((item) => item.id === id);
  return items.find((item, place) => place > at && item.kind !== "heading");
}
