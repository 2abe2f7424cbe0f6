/** What holds an item in its place in a block, for screens: ties to its neighbours, and what it comes after. */
import { isMoveItem } from "./lookup.ts";
import type { Heading, MoveItem, Plan, PlanItem } from "./schema.ts";

/** All items of an item's tie in plan order, itself included; empty when nothing is tied to it. */
export function tieOf(plan: Pick<Plan, "items">, item: MoveItem): MoveItem[] {
  if (item.keep === undefined) return [];
  const members = plan.items.filter((i): i is MoveItem => isMoveItem(i) && i.keep === item.keep);
  return members.length > 1 ? members : [];
}

/**
 * The move right above an item, which it could stay next to; or why there is none: a `pause` or a `heading` is in between,
 * or the item is at the `top` of the class.
 */
export type AboveTie =
  | { readonly is: "move"; readonly item: MoveItem; readonly tied: boolean }
  | { readonly is: "pause" | "heading" | "top" };

export function aboveOf(plan: Pick<Plan, "items">, item: MoveItem): AboveTie {
  const at = plan.items.findIndex((i) => i.id === item.id);
  const above = plan.items[at - 1];
  if (above === undefined) return { is: "top" };
  if (above.kind !== "move") return { is: above.kind };
  return { is: "move", item: above, tied: item.keep !== undefined && above.keep === item.keep };
}

/** The state of an item's tie: which neighbours it is with, and which members are elsewhere now. */
export interface TieState {
  readonly above: MoveItem | undefined;
  readonly below: MoveItem | undefined;
  /** Members that should be right beside the item's part of the tie and are not. */
  readonly apart: readonly MoveItem[];
}

/** Undefined when the item is tied to nothing. */
export function tieState(plan: Pick<Plan, "items">, item: MoveItem): TieState | undefined {
  const members = tieOf(plan, item);
  if (members.length === 0) return undefined;
  const at = plan.items.findIndex((i) => i.id === item.id);
  const together = (place: number): MoveItem | undefined => {
    const beside = plan.items[place];
    return beside?.kind === "move" && beside.keep === item.keep ? beside : undefined;
  };
  const run = new Set<string>([item.id]);
  for (const way of [-1, 1]) {
    for (let place = at + way; ; place += way) {
      const beside = together(place);
      if (!beside) break;
      run.add(beside.id);
    }
  }
  return { above: together(at - 1), below: together(at + 1), apart: members.filter((i) => !run.has(i.id)) };
}

/** The heading above an item, with all items of its block; undefined above the first heading. */
export function blockAround(
  plan: Pick<Plan, "items">,
  itemId: string,
): { readonly heading: Heading; readonly items: readonly PlanItem[] } | undefined {
  const at = plan.items.findIndex((i) => i.id === itemId);
  const from = plan.items.findLastIndex((i, place) => place <= at && i.kind === "heading");
  const heading = plan.items[from];
  if (at < 0 || heading?.kind !== "heading") return undefined;
  const next = plan.items.findIndex((i, place) => place > from && i.kind === "heading");
  return { heading, items: plan.items.slice(from + 1, next < 0 ? undefined : next) };
}

export interface EarlierStart {
  readonly item: PlanItem;
  /** Whether it is before the item, as it should be. */
  readonly holds: boolean;
}

/** The items an item comes after, in the order in which they were named. */
export function comesAfter(plan: Pick<Plan, "items">, item: MoveItem): EarlierStart[] {
  const at = plan.items.findIndex((i) => i.id === item.id);
  return (item.after ?? []).flatMap((id) => {
    const place = plan.items.findIndex((i) => i.id === id);
    const other = plan.items[place];
    return other ? [{ item: other, holds: place < at }] : [];
  });
}

/**
 * The moves of its block that an item may still be told to come after: not those it already comes after, none of its own
 * tie, and none that waits for it, directly, through others or through a tie, since no order could keep both.
 */
export function mayComeAfter(plan: Pick<Plan, "items">, item: MoveItem): MoveItem[] {
  const moves = (blockAround(plan, item.id)?.items ?? plan.items).filter(isMoveItem);
  const waiting = new Set<string>();
  const wait = (one: MoveItem): void => {
    if (waiting.has(one.id)) return;
    waiting.add(one.id);
    for (const tied of tieOf(plan, one)) wait(tied);
    for (const other of moves) if (other.after?.includes(one.id)) wait(other);
  };
  wait(item);
  return moves.filter((other) => !waiting.has(other.id) && !item.after?.includes(other.id));
}
