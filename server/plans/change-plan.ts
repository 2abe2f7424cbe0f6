/** Changes what is stored beside a plan's document: whether the team can read it, and the room it is taught in. */

import * as z from "zod";
import { addPlanEvent } from "#db/repos/event-repo.ts";
import { type PlanRow, setPlanRoom, setPlanState, setPlanTeam } from "#db/repos/plan-repo.ts";
import { readRoom } from "#db/repos/room-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { type Actor, canPlan, type Person } from "#lib/policy/can.ts";
import { NO_RIGHT, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { announcePlanStudio, announceState } from "#server/news/plan-news.ts";
import { openPlan } from "./open-plan.ts";
import { NO_SUCH_ROOM } from "./refusals.ts";

export const changePlanSchema = z
  .strictObject({ team: z.boolean().optional(), roomId: z.string().min(1).max(64).optional() })
  .refine((body) => body.team !== undefined || body.roomId !== undefined, "Give what to change: team or roomId.");
export type ChangePlan = z.infer<typeof changePlanSchema>;

/**
 * All or nothing. Another room has other machines, so a signed plan that moves to one is in writing again.
 * Errors: 401, 403, 404, 422 no-such-room.
 */
export function changePlan(app: Springline, actor: Actor, id: string, body: ChangePlan): Result<{ id: string }> {
  const opened = openPlan(app, actor, id, "plan.read");
  if (!opened.ok) return opened;
  const { row, person } = opened.value;
  const moves = body.roomId !== undefined && body.roomId !== row.roomId;
  const turns = body.team !== undefined && body.team !== row.team;
  if (turns && !canPlan(person, "plan.share", row)) return NO_RIGHT;
  if (moves && !canPlan(person, "plan.write", row)) return NO_RIGHT;
  if (moves && !readRoom(app.db, body.roomId ?? "")) {
    return NO_SUCH_ROOM;
  }
  inTransaction(app.db, () => {
    if (turns) storeTeam(app, row, person, body.team === true);
    if (moves) storeRoom(app, row, person, body.roomId ?? row.roomId);
  });
  if (turns) app.documents.refreshAccess();
  if (moves) announcePlanStudio(app, id);
  if (moves) app.checks.soon(id);
  if (turns || moves) announceState(app, id);
  return ok({ id });
}

function storeTeam(app: Springline, row: PlanRow, person: Person, team: boolean): void {
  setPlanTeam(app.db, row.id, team);
  const kind = team ? "team-on" : "team-off";
  addPlanEvent(app.db, { planId: row.id, at: app.now(), actorId: person.id, kind });
}

function storeRoom(app: Springline, row: PlanRow, person: Person, roomId: string): void {
  const event = { planId: row.id, at: app.now(), actorId: person.id };
  setPlanRoom(app.db, row.id, roomId);
  addPlanEvent(app.db, { ...event, kind: "room-changed", note: roomId });
  if (row.state !== "signed-off") return;
  setPlanState(app.db, row.id, { state: "in-writing", note: null });
  addPlanEvent(app.db, { ...event, kind: "written-on" });
}
