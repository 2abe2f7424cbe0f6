/** What a plan takes from its studio: library moves, the room's machines, the house standards. */
import type { Db } from "#db/connection.ts";
import { listRooms, readRoom } from "#db/repos/room-repo.ts";
import { springsTakenOut } from "#db/repos/studio-event-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import type { StudioContext } from "#lib/doc/from-studio.ts";
import type { Equipment, Spring } from "#lib/plan/schema.ts";
import { library } from "#server/library/library-moves.ts";

/** A room that is gone: a carriage of the usual travel and no springs, so that every spring is reported as missing. */
const NO_MACHINES: Equipment = { name: "No machines", carriageTravelMm: 1000, springs: [] };

/**
 * The context of a room. Asked after every burst of edits: the library (the large part) is parsed once per change,
 * room and standards are two small rows read afresh. An unknown room has no springs.
 */
export function studioContext(db: Db, roomId: string): StudioContext {
  const standards = readStudio(db)?.standards ?? {};
  const { moves, archived } = library(db);
  const equipment = readRoom(db, roomId)?.equipment ?? NO_MACHINES;
  const otherSprings = springsElsewhere(db, roomId, equipment);
  return {
    moves,
    ...(archived.length === 0 ? {} : { archived }),
    equipment,
    ...(otherSprings.length === 0 ? {} : { otherSprings }),
    standards,
  };
}

/** By id, each once: what this room had last, then what other rooms have, then what those had. */
function springsElsewhere(db: Db, roomId: string, { springs }: Equipment): Spring[] {
  const out = springsTakenOut(db);
  const candidates = [
    ...out.filter((gone) => gone.roomId === roomId).map((gone) => gone.spring),
    ...listRooms(db).flatMap((room) => room.equipment.springs),
    ...out.map((gone) => gone.spring),
  ];
  const known = new Set(springs.map((spring) => spring.id));
  return candidates.filter(({ id }) => {
    if (known.has(id)) return false;
    known.add(id);
    return true;
  });
}
