/** The checks of a program in a test: on its own thread, after the shortest of pauses. */

import { CheckDesk } from "#server/check/check-desk.ts";
import { createChecks } from "#server/check/checks.ts";
import type { CheckRunner } from "#server/check/runner.ts";
import type { Checks } from "#server/context/checks.ts";
import type { Springline } from "#server/context/springline.ts";
import { assess } from "#server/plans/assess-plan.ts";
import { announceCheck } from "#server/sign-off/after-check.ts";

/** `app` may not have its rooms yet. */
export const testChecks = (app: Springline): Checks =>
  createChecks({
    ...{ app, runner: sameThread(new CheckDesk(app.db, app.log)), programMark: "test" },
    ms: { quiet: 1, longest: 5 },
    heard: (answer) => announceCheck(app, answer),
  });

/** Checks on the calling thread. */
const sameThread = (desk: CheckDesk): CheckRunner => ({
  places: 1,
  run: async (_, { planId, withFindings }) => desk.check(planId, withFindings),
  assess: async (reading) => assess(reading),
  stop: async () => undefined,
});
