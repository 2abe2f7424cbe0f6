/** Assesses a plan as it is now. A large one takes seconds: commands ask `app.checks.assess`, which uses another thread. */

import { checkPlan } from "#lib/analysis/check-plan.ts";
import { contentHash } from "#lib/canonical/canonical.ts";
import { agree } from "#lib/plan/format.ts";
import { parsePlan } from "#lib/plan-file/parse.ts";
import { RULE_CRASHED } from "#lib/rules/findings.ts";
import type { Assessment, NotAFile, PlanReading } from "#server/context/assessment.ts";

/** Null for a document too damaged to be evaluated, such as one with values that JSON cannot express. */
export function assess(reading: PlanReading): Assessment | null {
  const { plan } = reading;
  try {
    const { findings } = checkPlan(plan);
    return {
      plan,
      hash: contentHash(plan),
      findings,
      mustFix: findings.filter((f) => f.level === "must" && f.rule !== RULE_CRASHED),
      broken: findings.filter((f) => f.rule === RULE_CRASHED && f.key?.includes(":crashed:")),
      notAFile: whyNotAFile(reading),
    };
  } catch {
    return null;
  }
}

/** A plan file is complete and valid, or it is not written: nothing is left out silently. */
export function whyNotAFile({ plan, unknownItems }: PlanReading): NotAFile | null {
  if (unknownItems > 0) {
    const some = agree(unknownItems, "One item is", `${unknownItems} items are`);
    return {
      pointer: null,
      message: `${some} of a kind that this version of Springline does not know. Open the plan with the newer version.`,
    };
  }
  const parsed = parsePlan(plan);
  return parsed.ok ? null : { pointer: parsed.pointer, message: `${parsed.message}.` };
}
