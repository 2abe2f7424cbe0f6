/** The springs a library can refer to: those of all rooms, each once, and any others a move names. */
import type { Equipment, Move } from "#lib/plan/schema.ts";
import type { SpringNames } from "./move-words.ts";

/** What the library needs to know of a room. */
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
  /** The highest count on one machine of any room. */
  readonly most: number;
}

/** In the order of the rooms, then those that `move` names and no room has. */
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

export const springNames = (springs: readonly Pick<KnownSpring, "id" | "label">[]): SpringNames =>
  new Map(springs.map(({ id, label }) => [id, label]));
