/** The timer that tells what was held back. Started by `server/main` alone. */
import type { Springline } from "#server/context/springline.ts";
import { tellChangedClasses } from "./class-changes.ts";

const EVERY_MS = 60_000;

/** Returns what stops it. A fault is written to the log, and the next run begins afresh. */
export function startClassRuns(app: Springline, everyMs = EVERY_MS): () => void {
  const timer = setInterval(() => {
    try {
      tellChangedClasses(app);
    } catch (err) {
      app.log.error({ err }, "changed classes could not be told");
    }
  }, everyMs);
  timer.unref();
  return () => clearInterval(timer);
}
