/** What the form's pages give it besides the move: rooms, names and ids that are taken, how thick a coil is drawn. */
import type { StudioRoom } from "#db/repos/room-repo.ts";
import type { Move } from "#lib/plan/schema.ts";
import type { Actor } from "#lib/policy/can.ts";
import type { Springline } from "#server/context/springline.ts";
import { readLibrary } from "#server/library/library.ts";
import { listRooms } from "#server/rooms/manage-rooms.ts";
import { coilWeight } from "../../_parts/coils/coil-weight.ts";

interface FormSurroundings {
  readonly rooms: readonly StudioRoom[];
  readonly coils: Readonly<Record<string, number>>;
  /** By small letters, with one space between words; the moves offered, but for `id`. */
  readonly names: Readonly<Record<string, string>>;
  readonly ids: readonly string[];
}

/** `id`: the move that is edited; null for a new one. */
export function formSurroundings(app: Springline, actor: Actor, id: string | null): FormSurroundings {
  const known = listRooms(app, actor);
  const rooms = known.ok ? known.value : [];
  const library = readLibrary(app, actor);
  const moves: Readonly<Record<string, Move>> = library.ok ? library.value.moves : {};
  const gone = new Set(library.ok ? library.value.archived : []);
  const offered = Object.entries(moves).filter(([other]) => other !== id && !gone.has(other));
  const springs = rooms.flatMap(({ equipment }) =>
    equipment.springs.map((spring) => ({ spring, all: equipment.springs })),
  );
  return {
    rooms,
    coils: Object.fromEntries(springs.toReversed().map(({ spring, all }) => [spring.id, coilWeight(spring, all)])),
    names: Object.fromEntries(offered.map(([, { name }]) => [name.trim().toLowerCase().replace(/\s+/g, " "), name])),
    ids: Object.keys(moves),
  };
}
