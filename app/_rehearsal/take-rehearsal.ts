/** Taking a rehearsal into the plan: the chosen changes and the speaking rate, as one undo step, or nothing at all. */
import type { PlanSession } from "#app/_session/session.ts";
import { shownIn } from "#app/_session/shown-in.ts";
import { readPlan } from "#lib/doc/read.ts";
import { setHead, setItemField } from "#lib/doc/write.ts";
import { type Chosen, rehearsalTake, takenChanges } from "#lib/floor/rehearsal-take.ts";
import type { Rehearsed } from "#lib/floor/rehearsed-schema.ts";
import { plural } from "#lib/plan/format.ts";
import type { PlanState } from "#lib/protocol/messages.ts";

/** Why nothing can be taken into a plan in this state, or null. */
export function whyNotTaken(state: PlanState, writes: boolean): string | null {
  if (!writes) return "This plan is not yours to write in: look, but nothing can be taken.";
  return state === "handed-in" ? "This plan is handed in and being read: take it back first, then take this." : null;
}

/**
 * Takes what was chosen of what was shown. When the plan was changed in the last moment, so that it would not be what was
 * shown, nothing is taken and false is returned: the preview is worked out anew.
 */
export function takeRehearsal(session: PlanSession, rehearsed: Rehearsed, chosen: Chosen, shown: string): boolean {
  if (whyNotTaken(session.getSnapshot().state.state, session.canWrite) !== null) return false;
  const take = rehearsalTake(readPlan(session.doc, session.studio), rehearsed);
  if (shownIn(take) !== shown) return false;
  const changes = takenChanges(take, chosen);
  const rate = chosen.rate && take.rate && take.rate.to !== take.rate.now ? take.rate : null;
  if (changes.length === 0 && !rate) return false;
  const taken = session.act((w) => {
    for (const { item, to } of changes) setItemField(w, item, "transitionSeconds", to);
    if (rate) setHead(w, "speech.syllablesPerSecond", rate.to);
  });
  if (taken) session.say(`Taken: ${takenWords(changes.length, rate !== null)}.`);
  return taken;
}

export function takenWords(changes: number, rate: boolean): string {
  const parts = [...(changes > 0 ? [plural(changes, "set-up change")] : []), ...(rate ? ["your speaking rate"] : [])];
  return parts.join(" and ") || "nothing";
}
