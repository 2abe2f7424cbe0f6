/**
 * Classes that somebody taught: those they were named on, else those in which they stood in the programme, and those that a lead
 * marked them for. Logs that were struck do not count.
 */
import { readLogRow } from "#db/repos/class-log-repo.ts";
import { listMarksOf } from "#db/repos/marks-repo.ts";
import { listNewestClasses } from "#db/repos/progress-repo.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import { type TaughtAgainstPlan, taughtAgainstPlan } from "#lib/progress/taught.ts";
import { LedClasses } from "#server/class-log/led-classes.ts";
import type { Springline } from "#server/context/springline.ts";

/** Our own choice: a year of a busy studio. */
const MOST_CLASSES = 1_000;

/** The newest first. `marks`: all that were set for this person. */
export function classesTaughtBy(
  app: Springline,
  userId: string,
  marks: readonly { readonly sessionId: string | null }[] = listMarksOf(app.db, userId),
): TaughtAgainstPlan[] {
  const marked = new Set(marks.map(({ sessionId }) => sessionId));
  const led = new LedClasses(app);
  return listNewestClasses(app.db, MOST_CLASSES)
    .filter((logged) => {
      const { struck, named, coachId } = led.of(logged);
      if (struck) return false;
      return coachId === userId || (named === null && marked.has(logged.key.split(".")[0] ?? ""));
    })
    .flatMap(({ key }) => {
      const row = readLogRow(app.db, key);
      return row ? [taughtAgainstPlan(JSON.parse(row.logJson) as ClassLog)] : []; // checked when it was received
    })
    .sort((a, b) => b.at - a.at);
}
