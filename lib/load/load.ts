/**
 * How heavy an item is: springs side by side, so forces add. F(x) = sum of n (preload + stiffness (x + offset)), never
 * below 0, for carriage travel x and the offset at which people start. Nearer to the anchor is lighter, so an offset can
 * replace a spring change. A model from the room's measured springs; the machine maker's manual comes first.
 */
import { withoutNoise } from "#lib/numbers/round.ts";
import { moveItems, moveOf, own } from "#lib/plan/lookup.ts";
import type { Equipment, Move, MoveItem, Plan } from "#lib/plan/schema.ts";
import { STANDARD_GRAVITY } from "#lib/statics/gravity.ts";
import { handsShare, type Pose } from "#lib/statics/hands.ts";
import { springsDiffer } from "#lib/transitions/transitions.ts";

/**
 * One move item. Newtons at the start, middle and end of its travel, joules a repetition one way, millimetres. Null:
 * the move does not work against springs, or the plan lacks it. Full precision, without floating-point noise.
 */
export interface LoadRow {
  readonly item: string;
  readonly atStartN: number | null;
  readonly atMidN: number | null;
  readonly atEndN: number | null;
  readonly workPerRepJ: number | null;
  /** The offset in mm that gives this item's middle load with the springs of the spring item before. */
  readonly offsetToMatchPrevious: number | null;
  /** Newtons on both hands for each kilogram of the person, held still; only where the move names its pose. */
  readonly handsN?: number;
}

type Springs = Readonly<Record<string, number>>;

/** Furthest offset either way, mm (plan file, "Load"). */
export const OFFSET_LIMIT_MM = 400;

/** One row for each move item, in plan order. Never throws. */
export function loadRows(plan: Plan): LoadRow[] {
  let before: MoveItem | null = null;
  return moveItems(plan).map((item) => {
    const move = moveOf(plan, item);
    if (!move) return { item: item.id, ...NO_LOAD };
    const hands = move.handsShare ? { handsN: withoutNoise(handsNPerKg(move.handsShare.pose).newtons) } : {};
    if (!worksSprings(move)) return { item: item.id, ...NO_LOAD, ...hands };
    const matched = matching({ plan, item, move, before });
    before = item;
    return { item: item.id, ...springLoad(plan, item, move), ...matched, ...hands };
  });
}

/** The nearest earlier move item that works against springs, whatever is in between. */
export function springItemBefore(plan: Plan, itemId: string): MoveItem | null {
  const items = moveItems(plan);
  const at = items.findIndex((i) => i.id === itemId);
  return items.slice(0, Math.max(0, at)).findLast((i) => worksSprings(moveOf(plan, i))) ?? null;
}

/** Newtons on both hands for each kilogram of the person, held still, with the band of the pose. */
export function handsNPerKg(pose: Pose): { newtons: number; low: number; high: number } {
  const { share, low, high } = handsShare(pose);
  return { newtons: share * STANDARD_GRAVITY, low: low * STANDARD_GRAVITY, high: high * STANDARD_GRAVITY };
}

/** Whether springs resist or help the move. */
export const worksSprings = (move: Move | undefined): boolean =>
  move?.resistance === "springs" || move?.resistance === "assisted";

/** Newtons at carriage travel `xMm`, started at `offsetMm`. Springs that the machine lacks are left out. */
export function forceN(equipment: Equipment, springs: Springs, at: { xMm: number; offsetMm: number }): number {
  const line = combinedSpring(equipment, springs);
  return Math.max(0, line.preloadN + line.stiffnessNPerMm * (at.xMm + at.offsetMm));
}

/** All springs that are on as one: stiffnesses (N/mm) and preloads (N) of parallel springs add up. */
export function combinedSpring(equipment: Equipment, springs: Springs): { preloadN: number; stiffnessNPerMm: number } {
  let preloadN = 0;
  let stiffnessNPerMm = 0;
  for (const spring of equipment.springs) {
    const n = own(springs, spring.id) ?? 0;
    preloadN += n * spring.preloadN;
    stiffnessNPerMm += n * spring.stiffnessNPerMm;
  }
  return { preloadN, stiffnessNPerMm };
}

/** The travel of a move in mm: its own, else the first half of the carriage's. */
export function travelMm(plan: Pick<Plan, "equipment">, move: Move): readonly [number, number] {
  return move.travelMm ?? [0, plan.equipment.carriageTravelMm / 2];
}

/**
 * Joules from one end of a travel to the other: the exact integral of the force, which is a straight line wherever it
 * is not held at 0.
 */
export function workJ(equipment: Equipment, springs: Springs, over: Over) {
  const { toMm, offsetMm } = over;
  const { preloadN, stiffnessNPerMm } = combinedSpring(equipment, springs);
  const pullsFromMm = pullsFrom({ preloadN, stiffnessNPerMm }, over);
  const force = (xMm: number) => Math.max(0, preloadN + stiffnessNPerMm * (xMm + offsetMm));
  return (((force(pullsFromMm) + force(toMm)) / 2) * (toMm - pullsFromMm)) / 1000;
}

interface Over {
  readonly fromMm: number;
  readonly toMm: number;
  readonly offsetMm: number;
}

/** How far the carriage goes before the springs begin to pull, mm: the whole travel where they never do, 0 with none on. */
export function slackMm(equipment: Equipment, springs: Springs, over: Over): number {
  return withoutNoise(pullsFrom(combinedSpring(equipment, springs), over) - over.fromMm);
}

/** Where on the travel the springs begin to pull, mm. Never beyond its end, so that the work after it is never below 0. */
function pullsFrom(spring: ReturnType<typeof combinedSpring>, { fromMm, toMm, offsetMm }: Over): number {
  if (!(spring.stiffnessNPerMm > 0)) return fromMm;
  return Math.min(toMm, Math.max(fromMm, -spring.preloadN / spring.stiffnessNPerMm - offsetMm));
}

const NO_LOAD = { atStartN: null, atMidN: null, atEndN: null, workPerRepJ: null, offsetToMatchPrevious: null } as const;

function springLoad(plan: Plan, item: MoveItem, move: Move) {
  const [fromMm, toMm] = travelMm(plan, move);
  const offsetMm = item.offsetMm ?? 0;
  const at = (xMm: number) => withoutNoise(forceN(plan.equipment, item.springs, { xMm, offsetMm }));
  return {
    atStartN: at(fromMm),
    atMidN: at((fromMm + toMm) / 2),
    atEndN: at(toMm),
    workPerRepJ: withoutNoise(workJ(plan.equipment, item.springs, { fromMm, toMm, offsetMm })),
  };
}

function matching(of: { plan: Plan; item: MoveItem; move: Move; before: MoveItem | null }) {
  const offset = of.before && springsDiffer(of.before.springs, of.item.springs) ? matchOffset(of, of.before) : null;
  const reachable = offset !== null && Math.abs(offset) <= OFFSET_LIMIT_MM;
  return { offsetToMatchPrevious: reachable ? offset : null };
}

/** Solves preload + stiffness (middle + offset) = this item's middle load for the springs before, over this travel. */
function matchOffset({ plan, item, move }: { plan: Plan; item: MoveItem; move: Move }, before: MoveItem) {
  const [fromMm, toMm] = travelMm(plan, move);
  const xMm = (fromMm + toMm) / 2;
  const wanted = forceN(plan.equipment, item.springs, { xMm, offsetMm: item.offsetMm ?? 0 });
  const { preloadN, stiffnessNPerMm } = combinedSpring(plan.equipment, before.springs);
  return stiffnessNPerMm > 0 ? withoutNoise((wanted - preloadN) / stiffnessNPerMm - xMm) : null;
}

/** Removes floating-point noise: 34.199999999999996 N is 34.2 N. */
