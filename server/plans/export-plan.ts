/** A plan as a file: complete and valid, or an error that says why it cannot be written. */
import { carriedStandards } from "#lib/doc/read.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { Actor } from "#lib/policy/can.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { whyNotAFile } from "./assess-plan.ts";
import { openPlan } from "./open-plan.ts";
import { withPlan } from "./plan-doc.ts";
import { cannotExport } from "./refusals.ts";

/** Errors: those of `openPlan` and `withPlan`, and 409 not-a-file with `details.pointer`. */
export function exportPlan(app: Pick<Springline, "db" | "documents">, actor: Actor, id: string): Result<Plan> {
  const opened = openPlan(app, actor, id, "plan.read");
  if (!opened.ok) return opened;
  return withPlan(app, opened.value.row, (reading, doc) => {
    // An imported file is exported with its own standards, although the studio checked the plan by those of the studio.
    const standards = carriedStandards(doc);
    const plan = standards ? { ...reading.plan, standards } : reading.plan;
    const why = whyNotAFile({ ...reading, plan });
    return why ? cannotExport(why) : ok(plan);
  });
}

/** A plan file byte for byte, wherever one is written. */
export const planFileText = (plan: Plan): string => `${JSON.stringify(plan, null, 2)}\n`;
