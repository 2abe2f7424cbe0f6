/** The studio data that an open plan is read with, for its page. */
import type { Actor } from "#lib/policy/can.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { type PlanStudio, planStudio } from "#server/studio-data/plan-studio.ts";
import { openPlan } from "./open-plan.ts";

/** Errors: 401, 403, 404. */
export function readPlanStudio(app: Pick<Springline, "db">, actor: Actor, id: string): Result<PlanStudio> {
  const opened = openPlan(app, actor, id, "plan.read");
  return opened.ok ? ok(planStudio(app.db, opened.value.row.roomId)) : opened;
}
