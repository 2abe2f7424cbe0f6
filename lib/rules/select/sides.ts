/** The seconds of one-sided items, summed by move and side. */
import { withoutNoise } from "#lib/numbers/round.ts";
import type { MoveItem } from "#lib/plan/schema.ts";
import type { RuleContext } from "../define/types.ts";

export interface SideSum {
  /** The move's first one-sided item. */
  readonly first: MoveItem;
  readonly left: readonly MoveItem[];
  readonly right: readonly MoveItem[];
  readonly leftSeconds: number;
  readonly rightSeconds: number;
}

/** One entry for each move that has a one-sided item, in order of first appearance. */
export function sideSums({ moves }: RuleContext): SideSum[] {
  const byMove = new Map<string, MoveItem[]>();
  for (const { item } of moves) {
    if (item.side === "left" || item.side === "right") byMove.set(item.move, [...(byMove.get(item.move) ?? []), item]);
  }
  return [...byMove.values()].flatMap((items) => {
    const [first] = items;
    const left = items.filter((item) => item.side === "left");
    const right = items.filter((item) => item.side === "right");
    return first ? [{ first, left, right, leftSeconds: sum(left), rightSeconds: sum(right) }] : [];
  });
}

const sum = (items: readonly MoveItem[]): number =>
  withoutNoise(items.reduce((total, item) => total + item.seconds, 0));
