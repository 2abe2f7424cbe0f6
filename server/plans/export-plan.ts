/** A plan as a file: complete, valid, without loss, or a sentence that says why it cannot be one just now. */
import type { Plan } from "#lib/plan/schema.ts";
import type { Actor } from "#lib/policy/can.ts";
import { fail, ok, type Result } from "#server/result.ts";
import type { Springline } from "#server/springline.ts";
import { whyNotAFile } from "./assess-plan.ts";
import { openPlan } from "./open-plan.ts";
import { withPlan } from "./plan-doc.ts";

/** Errors: those of `openPlan` and `withPlan`, and 409 not-a-file with `details.pointer`. */
export function exportPlan(app: Springline, actor: Actor, id: string): Result<Plan> {
  const opened = openPlan(app, actor, id, "plan.read");
  if (!opened.ok) return opened;
  return withPlan(app, opened.value.row, (reading) => {
    const why = whyNotAFile(reading);
    if (!why) return ok(reading.plan);
    const message = `This plan cannot be written as a file just now, since something would be lost or wrong: ${why.message}`;
    return fail(409, "not-a-file", message, why);
  });
}
