/**
 * The balance as bars: left and right of each group, what the theme promises for it, whether it is lopsided and because of
 * which moves.
 */
import { NOISE, withoutNoise } from "#lib/numbers/round.ts";
import { moveOf, sidePairs } from "#lib/plan/lookup.ts";
import { GROUPS, type Group, type MoveItem, type Plan } from "#lib/plan/schema.ts";
import type { Balance, GroupBalance } from "./balance.ts";

/** A difference above this share of the larger side counts as lopsided (common practice, no source). */
const LOPSIDED_SHARE = 0.05;

export const isLopsided = (b: Pick<GroupBalance, "left" | "right">): boolean =>
  Math.abs(b.left - b.right) > LOPSIDED_SHARE * Math.max(b.left, b.right);

export interface GroupBar {
  readonly group: Group;
  /** Seconds of work x weight. */
  readonly seconds: number;
  readonly left: number;
  readonly right: number;
  /** Share of the sum over all groups, 0..1. */
  readonly share: number;
  /** The share that the theme promises; null where it promises none. */
  readonly wanted: number | null;
  readonly missed: boolean;
  readonly lopsided: boolean;
}

/**
 * A bar for every group that is trained or promised, the most trained first, equals in the library's order.
 */
export function groupBars(plan: Pick<Plan, "theme">, { groups }: Balance): GroupBar[] {
  const bars = GROUPS.flatMap((group): GroupBar[] => {
    const b = groups[group] ?? { seconds: 0, left: 0, right: 0, share: 0 };
    const wanted = plan.theme?.shares?.[group] ?? 0;
    if (b.seconds === 0 && wanted === 0) return [];
    const { seconds, left, right, share } = b;
    const missed = share < wanted - NOISE;
    return [
      { group, seconds, left, right, share, wanted: wanted > 0 ? wanted : null, missed, lopsided: isLopsided(b) },
    ];
  });
  return bars.sort((a, b) => b.seconds - a.seconds);
}

/** Two items of one move that train a group unequally, or one item whose other side is missing. */
export interface UnevenPair {
  readonly move: string;
  readonly left: MoveItem | undefined;
  readonly right: MoveItem | undefined;
  /** Weighted seconds by which this pair favours the heavier side. */
  readonly by: number;
  /** Where to fix it: the shorter of the two, or the only one. */
  readonly goTo: string;
}
export interface UnevenGroup {
  readonly group: Group;
  readonly more: "left" | "right";
  /** Weighted seconds by which the heavier side is ahead. */
  readonly by: number;
  /** The pairs that cause it, the largest difference first. */
  readonly pairs: readonly UnevenPair[];
}

/** The lopsided groups of a class, the most lopsided first. */
export function unevenGroups(plan: Plan, { groups }: Balance): UnevenGroup[] {
  const uneven = GROUPS.flatMap((group): UnevenGroup[] => {
    const b = groups[group];
    if (!b || !isLopsided(b)) return [];
    const more = b.left > b.right ? "left" : "right";
    return [{ group, more, by: withoutNoise(Math.abs(b.left - b.right)), pairs: pairsBehind(plan, group, more) }];
  });
  return uneven.sort((a, b) => b.by - a.by);
}

function pairsBehind(plan: Plan, group: Group, more: "left" | "right"): UnevenPair[] {
  const pairs = sidePairs(plan).flatMap(({ move, left, right }): UnevenPair[] => {
    const one = left ?? right;
    const weight = one ? (moveOf(plan, one)?.muscles[group] ?? 0) : 0;
    const difference = weight * ((left?.seconds ?? 0) - (right?.seconds ?? 0));
    const by = withoutNoise(more === "left" ? difference : -difference);
    const goTo = left && right ? (left.seconds < right.seconds ? left : right) : one;
    return by > 0 && goTo ? [{ move, left, right, by, goTo: goTo.id }] : [];
  });
  return pairs.sort((a, b) => b.by - a.by);
}

/** Removes floating-point noise. */
