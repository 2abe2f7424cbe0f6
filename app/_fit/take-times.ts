/** Takes the times of a preview: only the seconds that change, and the closing where it takes up a rest. One undo step. */
import { asShown } from "#app/_session/previews.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { readPlan } from "#lib/doc/read.ts";
import { setHead, setItemField } from "#lib/doc/write.ts";
import { takenTimesWords } from "./fit-words.ts";
import { fitPreview } from "./preview.ts";

/**
 * False, and nothing is taken, when somebody changed the plan in the last moment so that other times would be shown now.
 * `shown` is the preview as text.
 */
export function takeTimes(session: PlanSession, shown: string): boolean {
  const preview = fitPreview(readPlan(session.doc, session.studio));
  const { fit } = preview;
  if (!fit.possible || asShown(preview) !== shown) return false;
  const taken = session.act((w) => {
    for (const { item, to } of fit.changed) setItemField(w, item, "seconds", to);
    if (fit.closingSeconds !== preview.closing) setHead(w, "closingSeconds", fit.closingSeconds);
  });
  if (taken) session.say(takenTimesWords(fit.changed.length, fit.total));
  return taken;
}
