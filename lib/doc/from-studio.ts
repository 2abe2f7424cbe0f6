/** What a plan's document takes from its studio, or from the file it came with: machines and moves. */
import type * as Y from "yjs";
import {
  type Equipment,
  equipmentSchema,
  ID_PATTERN,
  type Move,
  moveSchema,
  type PlanItem,
  planSchema,
  type Spring,
  type Standards,
} from "#lib/plan/schema.ts";
import { MOVE_KEY } from "./layout.ts";
import { stored } from "./stored.ts";

/** What a plan takes from its studio: the library, the room's machines, the studio standards. */
export interface StudioContext {
  /** The whole library, including moves no longer offered, since plans go on using them. */
  readonly moves: Readonly<Record<string, Move>>;
  /** Ids of moves that were taken out of the library: read, not offered. */
  readonly archived?: readonly string[];
  readonly equipment: Equipment;
  /** Springs that the room no longer has, or that another room has, so that a plan that uses one can still name it. */
  readonly otherSprings?: readonly Spring[];
  /** When given, even empty, these are the standards a plan is held to. */
  readonly standards?: Standards;
}

/** The machines that came with the file; undefined where the plan is read with the room's. */
export const carriedEquipment = (carried: Y.Map<unknown>): Equipment | undefined =>
  stored(equipmentSchema, carried.get("equipment"));

/** What came with the file that the plan was made from; it stays with the plan. */
export interface Carried {
  readonly equipment: Equipment | undefined;
  readonly moves: Readonly<Record<string, Move>>;
  readonly standards: Standards | undefined;
}

const standardsSchema = planSchema.shape.standards.def.innerType;

export const readCarried = (carried: Y.Map<unknown>): Carried => ({
  equipment: carriedEquipment(carried),
  moves: carriedMoves(carried),
  standards: stored(standardsSchema, carried.get("standards")),
});

/** The moves that came with the file, by id. */
export function carriedMoves(carried: Y.Map<unknown>): Record<string, Move> {
  const moves: Record<string, Move> = {};
  for (const key of [...carried.keys()].sort()) {
    const id = key.startsWith(MOVE_KEY) ? key.slice(MOVE_KEY.length) : "";
    const move = ID_PATTERN.test(id) ? stored(moveSchema, carried.get(key)) : undefined;
    if (move) moves[id] = move;
  }
  return moves;
}

/**
 * The room's machines, plus each spring that the plan uses and the room does not have, with a count of 0. The plan then
 * says what is missing, remains a complete file, and keeps the loads that were meant.
 */
export function withSpringsUsed(
  { equipment, otherSprings = [] }: StudioContext,
  items: readonly PlanItem[],
): Equipment {
  if (otherSprings.length === 0) return equipment;
  const used = new Set(items.flatMap((item) => (item.kind === "move" ? Object.keys(item.springs) : [])));
  const there = new Set(equipment.springs.map((spring) => spring.id));
  const missing = otherSprings.filter(({ id }) => used.has(id) && !there.has(id));
  if (missing.length === 0) return equipment;
  return { ...equipment, springs: [...equipment.springs, ...missing.map((spring) => ({ ...spring, count: 0 }))] };
}

export interface MoveSource {
  readonly carried: Carried["moves"];
  readonly library: StudioContext["moves"];
  readonly items: readonly PlanItem[];
  readonly equipment: Equipment;
}

/** The moves of the file, plus the library's for items that use others. `keep` may return an already fitted move. */
export function movesFor(
  { carried, library, items, equipment }: MoveSource,
  keep = (_id: string, _move: Move, make: () => Move): Move => make(),
): Record<string, Move> {
  const moves = { ...carried };
  for (const item of items) {
    if (item.kind !== "move" || Object.hasOwn(moves, item.move)) continue;
    const move = Object.hasOwn(library, item.move) ? library[item.move] : undefined;
    if (move) moves[item.move] = keep(item.move, move, () => withinEquipment(move, equipment));
  }
  return moves;
}

/** The library serves rooms with different machines: drops limits on springs that this room does not have. */
export function withinEquipment(move: Move, equipment: Equipment): Move {
  const { min, max } = move.springs ?? {};
  const known = new Set(equipment.springs.map((spring) => spring.id));
  const named = [...Object.keys(min ?? {}), ...Object.keys(max ?? {})];
  if (named.every((id) => known.has(id))) return move;
  const here = (counts: Record<string, number>) =>
    Object.fromEntries(Object.entries(counts).filter(([id]) => known.has(id)));
  return { ...move, springs: { ...(min && { min: here(min) }), ...(max && { max: here(max) }) } };
}
