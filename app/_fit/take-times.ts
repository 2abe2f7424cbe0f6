/** Taking the times of a preview: only the seconds that change, and the closing where it takes up a rest. One undo step. */
import type { PlanSession } from "#app/_session/session.ts";
import { shownIn } from "#app/_session/shown-in.ts";
import { readPlan } from "#lib/doc/read.ts";
import { setHead, setItemField } from "#lib/doc/write.ts";
import { clockTime, plural } from "#lib/plan/format.ts";
import { fitPreview } from "./preview.ts";

/**
 * Takes the times that were shown. When others have changed something in the last moment, so that they would not be
 * those that were shown, nothing is taken and false is returned: the preview is worked out anew.
 */
export function takeTimes(session: PlanSession, shown: string): boolean {
  const preview = fitPreview(readPlan(session.doc, session.studio));
  const { fit } = preview;
  if (!fit.possible || shownIn(preview) !== shown) return false;
  const taken = session.act((w) => {
    for (const { item, to } of fit.changed) setItemField(w, item, "seconds", to);
    if (fit.closingSeconds !== preview.closing) setHead(w, "closingSeconds", fit.closingSeconds);
  });
  if (taken) session.say(`${plural(fit.changed.length, "time")} taken: the class ends at ${clockTime(fit.total)}.`);
  return taken;
}
