/** A lead hands a plan back with what is to be changed. */
import type { Actor } from "#lib/policy/can.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { openPlan } from "#server/plans/open-plan.ts";
import { expectState, takeStep } from "./plan-states.ts";

/** Errors: 401, 403, 404, 409 wrong-state. The note was checked to be there. */
export function handBack(app: Springline, actor: Actor, id: string, note: string): Result<{ id: string }> {
  const opened = openPlan(app, actor, id, "plan.hand-back");
  if (!opened.ok) return opened;
  const { row, person } = opened.value;
  const state = expectState(row, ["handed-in"], "It can be handed back while it is handed in.");
  if (!state.ok) return state;
  takeStep(app, id, { state: "handed-back", note, actorId: person.id, event: "handed-back" });
  return ok({ id });
}
