/** Takes the chosen change times and the speaking rate of a rehearsal into the plan: one undo step, or nothing at all. */
import { asShown } from "#app/_session/previews.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { readPlan } from "#lib/doc/read.ts";
import { setHead, setItemField } from "#lib/doc/write.ts";
import { type Chosen, rehearsalTake, takenChanges } from "#lib/floor/rehearsal-take.ts";
import type { Rehearsed } from "#lib/floor/rehearsed-schema.ts";
import { takenWords, whyNotTaken } from "./rehearsals-words.ts";

/**
 * False, and nothing is taken, when somebody changed the plan in the last moment so that other times would be shown now.
 * `shown` is the preview as text.
 */
export function takeRehearsal(session: PlanSession, rehearsed: Rehearsed, chosen: Chosen, shown: string): boolean {
  if (whyNotTaken(session.getSnapshot().state.state, session.canWrite) !== null) return false;
  const take = rehearsalTake(readPlan(session.doc, session.studio), rehearsed);
  if (asShown(take) !== shown) return false;
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
