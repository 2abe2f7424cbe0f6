/** One move with its record: who added it, and who changed what. */
import type { Db } from "#db/connection.ts";
import { listMoveEvents, type MoveEventKind, type MoveRow, readMoveRow } from "#db/repos/move-repo.ts";
import { FORMER_MEMBER, namesById } from "#db/repos/people-repo.ts";
import { listStudioRooms } from "#db/repos/room-repo.ts";
import { type MoveChange, moveChanges } from "#lib/library/changes.ts";
import { knownSprings, springNames } from "#lib/library/known-springs.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { NO_RIGHT, NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { NOBODY } from "./store-move.ts";

export interface MoveRecordLine {
  /** ms since the epoch. */
  readonly at: number;
  /** Null when it came with the studio's first library. */
  readonly byName: string | null;
  readonly kind: MoveEventKind;
  /** What changed, in words. Empty when the state before is not known. */
  readonly changes: readonly MoveChange[];
}

export interface MoveDetail extends MoveRow {
  /** The newest first; empty for a move of the first library that nobody has changed. */
  readonly record: readonly MoveRecordLine[];
}

/** Errors: 403 no-right, 404. */
export function readMoveDetail(app: Pick<Springline, "db">, actor: Actor, id: string): Result<MoveDetail> {
  if (!can(actor, "library.read")) return NO_RIGHT;
  const row = readMoveRow(app.db, id);
  return row ? ok({ ...row, record: recordOf(app.db, id) }) : NOT_FOUND;
}

/** Id of the person who changed it last; null when that is not known. */
export const lastChangeBy = (db: Db, id: string): string | null => listMoveEvents(db, id)[0]?.actorId ?? null;

function recordOf(db: Db, id: string): MoveRecordLine[] {
  const events = listMoveEvents(db, id);
  const names = namesById(db);
  const springs = springNames(knownSprings(listStudioRooms(db)));
  return events.map(({ at, actorId, kind, move }, i) => {
    const before = events[i + 1]?.move;
    const changes = kind === "changed" && before ? moveChanges(before, move, springs) : [];
    const byName = actorId === NOBODY ? null : (names.get(actorId) ?? FORMER_MEMBER);
    return { at, byName, kind, changes };
  });
}
