/**
 * The next lighter and the next heavier choice of springs, with what the room has and the move allows. A step is one
 * spring on, one off, or one exchanged for another.
 */
import { moveOf, own } from "#lib/plan/lookup.ts";
import type { Equipment, Move, MoveItem, Plan } from "#lib/plan/schema.ts";
import { forceN, travelMm } from "./load.ts";

type Springs = Readonly<Record<string, number>>;

interface Neighbour {
  readonly springs: Springs;
  /** Newtons in the middle of the travel, from the item's own offset. */
  readonly atMidN: number;
}
interface Neighbours {
  readonly lighter: Neighbour | null;
  readonly heavier: Neighbour | null;
}

/** Choices that differ by less than this (N) count as the same load: half of the last digit shown. */
const SAME_N = 0.05;

/** Among the choices one step away, those with the next lower and next higher middle load; null where there is none. */
export function neighbours(plan: Plan, item: MoveItem): Neighbours {
  const move = moveOf(plan, item);
  if (!move) return { lighter: null, heavier: null };
  const [from, to] = travelMm(plan, move);
  const at = { xMm: (from + to) / 2, offsetMm: item.offsetMm ?? 0 };
  const here = forceN(plan.equipment, item.springs, at);
  const steps = stepsFrom(item.springs, plan.equipment, move).map((springs) => ({
    springs,
    atMidN: forceN(plan.equipment, springs, at),
  }));
  const nearest = (list: readonly Neighbour[]): Neighbour | null =>
    list.reduce<Neighbour | null>((best, n) => (best && away(best, here) <= away(n, here) ? best : n), null);
  return {
    lighter: nearest(steps.filter((n) => n.atMidN < here - SAME_N)),
    heavier: nearest(steps.filter((n) => n.atMidN > here + SAME_N)),
  };
}

const away = (n: Neighbour, here: number): number => Math.abs(n.atMidN - here);

interface Asked {
  readonly equipment: Equipment;
  readonly move: Move;
  readonly spring: string;
  readonly n: number;
}

const isEnough = ({ move, spring, n }: Asked): boolean => n >= (own(move.springs?.min, spring) ?? 0);

function isThere({ equipment, move, spring, n }: Asked): boolean {
  const there = equipment.springs.find((s) => s.id === spring)?.count ?? 0;
  return n <= Math.min(there, own(move.springs?.max, spring) ?? there);
}

/**
 * One off, one on, or both, fewest changes first. Taking off checks only the minimum and putting on only the maximum, so
 * that a step back from too many springs is always possible.
 */
function stepsFrom(springs: Springs, equipment: Equipment, move: Move): Springs[] {
  const change = (id: string, by: number) => ({ spring: id, n: (own(springs, id) ?? 0) + by });
  const ids = equipment.springs.map((s) => s.id);
  const offs = ids.map((id) => change(id, -1)).filter((c) => isEnough({ equipment, move, ...c }));
  const ons = ids.map((id) => change(id, 1)).filter((c) => isThere({ equipment, move, ...c }));
  const swaps = offs.flatMap((off) => ons.filter((on) => on.spring !== off.spring).map((on) => [off, on]));
  return [...offs.map((c) => [c]), ...ons.map((c) => [c]), ...swaps].map((list) => ({
    ...springs,
    ...Object.fromEntries(list.map((c) => [c.spring, c.n])),
  }));
}
