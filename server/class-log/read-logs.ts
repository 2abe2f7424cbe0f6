/** The classes taught from an edition, for people who may read the edition. */
import { listClassLogs, type StoredLog } from "#db/repos/class-log-repo.ts";
import { readRoom } from "#db/repos/room-repo.ts";
import type { Actor } from "#lib/policy/can.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { readSignedEdition } from "#server/editions/editions.ts";

export interface TaughtClass extends StoredLog {
  readonly roomName: string;
}
export interface TaughtClasses {
  readonly edition: Extract<ReturnType<typeof readSignedEdition>, { ok: true }>["value"];
  /** The newest first. */
  readonly classes: readonly TaughtClass[];
}

/** Errors: 401, 403, 404, as for the edition itself. */
export function readClassLogs(app: Springline, actor: Actor, planId: string, number: number): Result<TaughtClasses> {
  const edition = readSignedEdition(app, actor, planId, number);
  if (!edition.ok) return edition;
  const classes = listClassLogs(app.db, planId, number).map((stored) => ({
    ...stored,
    roomName: readRoom(app.db, stored.roomId)?.name ?? "",
  }));
  return ok({ edition: edition.value, classes });
}
