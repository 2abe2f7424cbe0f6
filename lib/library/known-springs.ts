/** The springs a library can speak of: those of all rooms, each once, and whatever a move names besides. */
import type { Equipment, Move } from "#lib/plan/schema.ts";
import type { SpringNames } from "./move-words.ts";

/** A room as far as the library cares. */
export interface RoomMachines {
  readonly name: string;
  readonly equipment: Equipment;
}

export interface KnownSpring {
  readonly id: string;
  /** The studio's own name; the id where no room has such a spring. */
  readonly label: string;
  /** Names of the rooms whose machines have it; empty when none has. */
  readonly rooms: readonly string[];
  /** The most that one machine of any room has. */
  readonly most: number;
}

/** In the order of the rooms, then what `move` names and no room has. */
export function knownSprings(rooms: readonly RoomMachines[], move?: Pick<Move, "springs">): KnownSpring[] {
  const found = new Map<string, KnownSpring>();
  for (const { name, equipment } of rooms) {
    for (const { id, label, count } of equipment.springs) {
      const had = found.get(id);
      found.set(id, {
        id,
        label: had?.label ?? label,
        rooms: [...(had?.rooms ?? []), name],
        most: Math.max(had?.most ?? 0, count),
      });
    }
  }
  for (const id of [...Object.keys(move?.springs?.min ?? {}), ...Object.keys(move?.springs?.max ?? {})]) {
    if (!found.has(id)) found.set(id, { id, label: id, rooms: [], most: 0 });
  }
  return [...found.values()];
}

export const springNames = (springs: readonly KnownSpring[]): SpringNames =>
  new Map(springs.map(({ id, label }) => [id, label]));
