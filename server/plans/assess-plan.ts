/** The server's view of a plan as it is now: its hash, its findings, and whether it is a valid plan file. */

import { checkPlan } from "#lib/analysis/check-plan.ts";
import { contentHash } from "#lib/canonical/canonical.ts";
import { agree } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { parsePlan } from "#lib/plan-file/parse.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { RULE_CRASHED } from "#lib/rules/findings.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { PlanReading } from "./plan-doc.ts";
import { UNREADABLE_PLAN } from "./refusals.ts";

export interface Assessment {
  readonly plan: Plan;
  /** SHA-256 (hex) of the canonical plan. */
  readonly hash: string;
  readonly findings: readonly Finding[];
  readonly mustFix: readonly Finding[];
  /** Rules that crashed on this plan: nothing is known about what they look for. */
  readonly broken: readonly Finding[];
  /** Why it cannot be written as a plan file without loss; null when it can. */
  readonly notAFile: NotAFile | null;
}

export interface NotAFile {
  /** JSON Pointer of the place, if there is one. */
  readonly pointer: string | null;
  /** The place and what should be there, in one sentence. */
  readonly message: string;
}

/** Errors: 409 not-a-file for a forged or damaged document that cannot be evaluated. */
export function assessed(reading: PlanReading): Result<Assessment> {
  const found = tryAssess(reading);
  return found ? ok(found) : UNREADABLE_PLAN;
}

/** Throws on values that JSON cannot express. */
function assess(reading: PlanReading): Assessment {
  const { plan } = reading;
  const { findings } = checkPlan(plan);
  return {
    plan,
    hash: contentHash(plan),
    findings,
    mustFix: findings.filter((f) => f.level === "must" && f.rule !== RULE_CRASHED),
    broken: findings.filter((f) => f.rule === RULE_CRASHED && f.key?.includes(":crashed:")),
    notAFile: whyNotAFile(reading),
  };
}

/** The assessment; null for a document too damaged to be evaluated. */
export function tryAssess(reading: PlanReading): Assessment | null {
  try {
    return assess(reading);
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
