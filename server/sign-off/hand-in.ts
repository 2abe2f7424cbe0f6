/** Offering a plan to the leads for reading, and taking it back. */
import type { Actor } from "#lib/policy/can.ts";
import { NO_RIGHT, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { tellOffered, tellTakenBack } from "#server/notices/tell-plan.ts";
import { storeArchived } from "#server/plans/archive-plan.ts";
import { openPlan } from "#server/plans/open-plan.ts";
import { assessNow } from "#server/plans/plan-doc.ts";
import { endRound, momentText, openRound, openRoundOf, textIfRead } from "#server/rounds/keep-rounds.ts";
import { expectState, takeStep } from "./plan-states.ts";

/** Allowed with findings that must be fixed, since a lead may be able to help. Errors: 401, 403, 404, 409 wrong-state. */
export async function handIn(
  app: Springline,
  actor: Actor,
  id: string,
  note?: string,
): Promise<Result<{ mustFix: number }>> {
  const opened = openForHandIn(app, actor, id);
  if (!opened.ok) return opened;
  const found = await assessNow(app, opened.value.row);
  if (!found.ok) return found;
  // Rights and state may have changed while the rules were run.
  const still = openForHandIn(app, actor, id);
  if (!still.ok) return still;
  const { row, person } = still.value;
  // Otherwise the lead would not see it on the desk.
  if (row.archivedAt !== null) storeArchived(app, id, person.id, null);
  const said = { note: note || null, actorId: person.id };
  const offered = { state: "handed-in", handedInBy: person.id, handedInAt: app.now(), event: "handed-in" } as const;
  takeStep(app, id, { ...said, ...offered, hash: found.value.hash }, () => {
    const round = openRound(app, id, { ...said, text: momentText(found.value) });
    tellOffered(app, row, { byId: person.id, round });
  });
  return ok({ mustFix: found.value.mustFix.length });
}

function openForHandIn(app: Springline, actor: Actor, id: string): ReturnType<typeof openPlan> {
  const opened = openPlan(app, actor, id, "plan.hand-in");
  if (!opened.ok) return opened;
  const state = expectState(
    opened.value.row,
    ["in-writing", "handed-back"],
    "Only a plan that is in writing or returned with notes can be offered for reading.",
  );
  return state.ok ? opened : state;
}

/** For the person who offered it for reading, and the plan's owner. Errors: 401, 403, 404, 409 wrong-state. */
export async function takeBack(app: Springline, actor: Actor, id: string): Promise<Result<{ id: string }>> {
  const opened = openToTakeBack(app, actor, id);
  if (!opened.ok) return opened;
  const found = await assessNow(app, opened.value.row);
  // Rights and state may have changed while the rules were run.
  const still = openToTakeBack(app, actor, id);
  if (!still.ok) return still;
  const { row, person } = still.value;
  const said = { note: null, actorId: person.id };
  takeStep(app, id, { ...said, state: "in-writing", event: "taken-back" }, () => {
    const { readerId } = openRoundOf(app, row);
    const round = endRound(app, row, { ...said, outcome: "taken-back", text: textIfRead(found) });
    tellTakenBack(app, row, { byId: person.id, round }, readerId);
  });
  return ok({ id });
}

function openToTakeBack(app: Springline, actor: Actor, id: string): ReturnType<typeof openPlan> {
  const opened = openPlan(app, actor, id, "plan.hand-in");
  if (!opened.ok) return opened;
  const { row, person } = opened.value;
  const state = expectState(row, ["handed-in"], "Only a plan that is offered for reading can be taken back.");
  if (!state.ok) return state;
  return person.id === row.handedInBy || person.id === row.ownerId ? opened : NO_RIGHT;
}
