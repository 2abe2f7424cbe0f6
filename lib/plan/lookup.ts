/**
 * Safe look-ups in a plan. Ids come from people and files, so only a map's own keys count: "constructor" is a valid id,
 * and every object inherits a property of that name.
 */
import { PLAN_DEFAULTS } from "./defaults.ts";
import type { CueKind, Move, MoveItem, Plan, PlanItem, Spring } from "./schema.ts";

/** The value of a map's own key, or undefined. */
export function own<T>(map: Readonly<Record<string, T>> | undefined, key: string): T | undefined {
  return map !== undefined && Object.hasOwn(map, key) ? map[key] : undefined;
}

/** The library move of an item, or undefined when the plan does not have it. */
export const moveOf = (plan: Plan, item: MoveItem): Move | undefined => own(plan.moves, item.move);

export const springOf = (plan: Plan, id: string): Spring | undefined => plan.equipment.springs.find((s) => s.id === id);

export const isMoveItem = (item: PlanItem): item is MoveItem => item.kind === "move";

export const moveItems = (plan: Plan): MoveItem[] => plan.items.filter(isMoveItem);

/** For each index, the first later item for which `isOne` holds. */
export function followingEach<T extends PlanItem>(
  items: readonly PlanItem[],
  isOne: (item: PlanItem) => item is T,
): (T | undefined)[] {
  const following = new Array<T | undefined>(items.length);
  let next: T | undefined;
  for (let at = items.length - 1; at >= 0; at--) {
    following[at] = next;
    const item = items[at];
    if (item && isOne(item)) next = item;
  }
  return following;
}

export const itemById = (plan: Plan, id: string): PlanItem | undefined => plan.items.find((i) => i.id === id);

/** A value of the plan's head in seconds, or the default where it is left out. */
export function headSeconds(plan: Plan, key: keyof typeof PLAN_DEFAULTS): number {
  return plan[key] ?? PLAN_DEFAULTS[key];
}

export interface SidePair {
  readonly move: string;
  /** Undefined where the other side is done more often. */
  readonly left: MoveItem | undefined;
  readonly right: MoveItem | undefined;
}

/** The left and right items of each move matched in order: first left with first right, and so on. */
export function sidePairs(plan: Plan): SidePair[] {
  const byMove = new Map<string, { left: MoveItem[]; right: MoveItem[] }>();
  for (const item of moveItems(plan)) {
    if (item.side !== "left" && item.side !== "right") continue;
    const sides = byMove.get(item.move) ?? { left: [], right: [] };
    sides[item.side].push(item);
    byMove.set(item.move, sides);
  }
  return [...byMove].flatMap(([move, { left, right }]) =>
    Array.from({ length: Math.max(left.length, right.length) }, (_, i) => ({ move, left: left[i], right: right[i] })),
  );
}

/** Whether the item has a line of this kind with words in it. */
export const hasLineOf = (item: MoveItem, kind: CueKind): boolean =>
  (item.script ?? []).some((line) => line.kind === kind && line.text.trim() !== "");
