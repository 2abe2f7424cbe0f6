/** The rehearsals of a plan that devices have reported, for people who may read the plan. */
import { listRehearsals } from "#db/repos/class-log-repo.ts";
import { readRoom } from "#db/repos/room-repo.ts";
import type { Rehearsed } from "#lib/floor/rehearsed-schema.ts";
import type { Actor } from "#lib/policy/can.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { openPlan } from "#server/plans/open-plan.ts";

/** Older ones are no longer relevant: the plan has changed since. */
const REHEARSALS = 10;

export interface ToldRehearsal {
  readonly id: string;
  /** ms since the epoch, by the device's clock. */
  readonly at: number;
  readonly edition: number;
  readonly roomName: string;
  readonly rehearsed: Rehearsed;
}

/** The newest first, without those in which nothing was tapped. Errors: 401, 403, 404. */
export function readRehearsals(app: Springline, actor: Actor, planId: string): Result<readonly ToldRehearsal[]> {
  const opened = openPlan(app, actor, planId, "plan.read");
  if (!opened.ok) return opened;
  const told = listRehearsals(app.db, planId, REHEARSALS).flatMap(({ log, roomId }): ToldRehearsal[] => {
    const { rehearsed } = log;
    if (!rehearsed || rehearsed.changes.length + rehearsed.lines.length === 0) return [];
    const roomName = readRoom(app.db, roomId)?.name ?? "";
    return [{ id: log.sessionId, at: Date.parse(log.startedAt), edition: log.edition.number, roomName, rehearsed }];
  });
  return ok(told);
}
