/** The checks of the program in a test: on their own thread, after the shortest pause. */
import { CheckDesk } from "#server/check/check-desk.ts";
import { type Checks, createChecks } from "#server/check/checks.ts";
import { sameThread } from "#server/check/runner.ts";
import { announceCheck } from "#server/plans/announce-check.ts";
import type { Springline } from "#server/springline.ts";

/** `app` may not have its rooms yet. */
export const testChecks = (app: Springline): Checks =>
  createChecks({
    ...{ app, runner: sameThread(new CheckDesk(app.db, app.log)), programMark: "test" },
    ms: { quiet: 1, longest: 5 },
    heard: (answer) => announceCheck(app, answer),
  });
