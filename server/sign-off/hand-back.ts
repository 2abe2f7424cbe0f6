/** A lead hands a plan back and says what has to change. */
import type { Actor } from "#lib/policy/can.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { tellReturned } from "#server/notices/tell-plan.ts";
import { openPlan } from "#server/plans/open-plan.ts";
import { expectState, takeStep } from "./plan-states.ts";

/** The note must not be empty. Errors: 401, 403, 404, 409 wrong-state. */
export function handBack(app: Springline, actor: Actor, id: string, note: string): Result<{ id: string }> {
  const opened = openPlan(app, actor, id, "plan.hand-back");
  if (!opened.ok) return opened;
  const { row, person } = opened.value;
  const state = expectState(row, ["handed-in"], "Only a plan that is offered for reading can be returned with notes.");
  if (!state.ok) return state;
  const tell = () => tellReturned(app, row, person.id);
  takeStep(app, id, { state: "handed-back", note, actorId: person.id, event: "handed-back", tell });
  return ok({ id });
}
