/** A lead returns a plan with notes and says what has to change. */
import type * as z from "zod";
import type { Actor } from "#lib/policy/can.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { tellReturned } from "#server/notices/tell-plan.ts";
import { openPlan } from "#server/plans/open-plan.ts";
import { assessNow } from "#server/plans/plan-doc.ts";
import { endRound, textIfRead } from "#server/rounds/keep-rounds.ts";
import { otherRound } from "#server/rounds/same-round.ts";
import { expectState, type returnSchema, takeStep } from "./plan-states.ts";

/** The note must not be empty. Errors: 401, 403, 404; 409 wrong-state, other-round. */
export async function handBack(
  app: Springline,
  actor: Actor,
  id: string,
  { note, mainPoints = [], round: meant }: z.infer<typeof returnSchema>,
): Promise<Result<{ id: string }>> {
  const opened = openToReturn(app, actor, id, meant);
  if (!opened.ok) return opened;
  const found = await assessNow(app, opened.value.row);
  // Rights and state may have changed while the rules were run.
  const still = openToReturn(app, actor, id, meant);
  if (!still.ok) return still;
  const { row, person } = still.value;
  const said = { note, actorId: person.id };
  takeStep(app, id, { ...said, state: "handed-back", event: "handed-back" }, () => {
    const round = endRound(app, row, { ...said, outcome: "returned", mainPoints, text: textIfRead(found) });
    tellReturned(app, row, { byId: person.id, round });
  });
  return ok({ id });
}

function openToReturn(
  app: Springline,
  actor: Actor,
  id: string,
  meant: number | undefined,
): ReturnType<typeof openPlan> {
  const opened = openPlan(app, actor, id, "plan.hand-back");
  if (!opened.ok) return opened;
  const other = otherRound(app, opened.value.row, meant);
  if (other) return other;
  const needed = "Only a plan that is offered for reading can be returned with notes.";
  const state = expectState(opened.value.row, ["handed-in"], needed);
  return state.ok ? opened : state;
}
