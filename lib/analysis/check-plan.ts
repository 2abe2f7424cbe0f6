/** Runs every rule over a plan once. The same plan gives the same findings on the server and in the page. Never throws. */
import { type PlanAnalysis, PlanAnalyst } from "#lib/analysis/analysis.ts";
import type { CueTrack } from "#lib/cues/types.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { AnyRule, Finding } from "#lib/rules/define/types.ts";
import { RULES } from "#lib/rules/registry.ts";

export interface PlanCheck {
  /** Seconds the class takes, closing included. */
  readonly total: number;
  /** Seconds of its slot. */
  readonly length: number;
  /** In plan order (those about the whole plan first), then by level, then by rule id, then in the rule's own order. */
  readonly findings: readonly Finding[];
  /** What is said when, as the rules see it; empty when the times are damaged. */
  readonly track: CueTrack;
}

/** Analyses a plan once. */
export const analyse = (plan: Plan, rules: readonly AnyRule[] = RULES): PlanAnalysis => new PlanAnalyst(rules).of(plan);

/** Everything that the rules find in a plan, with the plan's studio standards over the rules' defaults. */
export function checkPlan(plan: Plan, rules: readonly AnyRule[] = RULES): PlanCheck {
  const known = analyse(plan, rules);
  return {
    total: known.clock.total,
    length: plan.lengthSeconds,
    findings: known.findings,
    get track() {
      return known.track;
    },
  };
}
