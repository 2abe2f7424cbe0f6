/** The studio data that a plan is read with, and a fingerprint of them by which pages notice a change. */
import type { Db } from "#db/connection.ts";
import { MISSING_ROOM, readRoom } from "#db/repos/room-repo.ts";
import { contentHash } from "#lib/canonical/canonical.ts";
import type { StudioContext } from "#lib/doc/from-studio.ts";
import { studioContext } from "#server/studio-data/studio-context.ts";

export interface PlanStudio extends StudioContext {
  readonly roomName: string;
  /** A fingerprint: differs when anything else here does. */
  readonly mark: string;
}

/** The library is by far the largest part, and the same object until it changes, so its hash is cached. */
const moveMarks = new WeakMap<StudioContext["moves"], string>();

function markOfMoves(moves: StudioContext["moves"]): string {
  const known = moveMarks.get(moves);
  if (known !== undefined) return known;
  const mark = contentHash(moves);
  moveMarks.set(moves, mark);
  return mark;
}

/** For a plan of this room. */
export function planStudio(db: Db, roomId: string): PlanStudio {
  const context = studioContext(db, roomId);
  const roomName = readRoom(db, roomId)?.name ?? MISSING_ROOM;
  const { moves, ...small } = context;
  return { ...context, roomName, mark: contentHash({ ...small, roomName, moves: markOfMoves(moves) }) };
}
