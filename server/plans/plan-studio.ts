/** What a plan's page holds of its studio, with a mark by which it knows when that has changed. */
import type { Db } from "#db/connection.ts";
import { readRoom } from "#db/repos/room-repo.ts";
import { contentHash } from "#lib/canonical/canonical.ts";
import type { StudioContext } from "#lib/doc/from-studio.ts";
import type { Actor } from "#lib/policy/can.ts";
import { ok, type Result } from "#server/result.ts";
import { studioContext } from "#server/rooms/studio-context.ts";
import type { Springline } from "#server/springline.ts";
import { openPlan } from "./open-plan.ts";

export interface PlanStudio extends StudioContext {
  readonly roomName: string;
  /** Differs when anything else here does. */
  readonly mark: string;
}

/** The library is by far the largest part and is the same object until it changes. */
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
  const roomName = readRoom(db, roomId)?.name ?? "a room that is gone";
  const { moves, ...small } = context;
  return { ...context, roomName, mark: contentHash({ ...small, roomName, moves: markOfMoves(moves) }) };
}

/** For whoever may read the plan. Errors: 401, 403, 404. */
export function readPlanStudio(app: Pick<Springline, "db">, actor: Actor, id: string): Result<PlanStudio> {
  const opened = openPlan(app, actor, id, "plan.read");
  return opened.ok ? ok(planStudio(app.db, opened.value.row.roomId)) : opened;
}
