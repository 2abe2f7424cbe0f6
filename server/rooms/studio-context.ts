/** What a plan takes from its studio: library moves, the room's machines, the house standards. */
import type { Db } from "#db/connection.ts";
import { readRoom } from "#db/repos/room-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import type { StudioContext } from "#lib/doc/read.ts";
import type { Equipment } from "#lib/plan/schema.ts";
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
  return {
    moves,
    ...(archived.length === 0 ? {} : { archived }),
    equipment: readRoom(db, roomId)?.equipment ?? NO_MACHINES,
    standards,
  };
}
