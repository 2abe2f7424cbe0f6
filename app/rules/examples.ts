/** A rule's examples with what the rule says of each: run, never written down. Pure. */

import { checkPlan } from "#lib/analysis/check-plan.ts";
import { sameData } from "#lib/plan/same-data.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { AnyRule, Finding } from "#lib/rules/define/types.ts";
import { examplesOf } from "#lib/rules/examples.ts";
import type { StudioStandard } from "#lib/rules/studio-standard.ts";
import { saysSomethingElse } from "./excerpt.ts";

export interface RunExample {
  readonly say: string;
  readonly plan: Plan;
  /** What is said in it matters to the rule. */
  readonly lines: boolean;
  /** With the rule's own level and limits. */
  readonly findings: readonly Finding[];
  /** With the house's; null where it says the same. */
  readonly here: readonly Finding[] | null;
}

export function ruleExamples(rule: AnyRule, house: StudioStandard | null): { pass: RunExample[]; fail: RunExample[] } {
  const { pass, fail } = examplesOf(rule);
  const lines = saysSomethingElse([...pass, ...fail].map(({ plan }) => plan));
  const run = ({ say, plan }: { say: string; plan: Plan }): RunExample => {
    const { findings } = checkPlan(plan, [rule]);
    const here = house && checkPlan({ ...plan, standards: { [rule.id]: house } }, [rule]).findings;
    return { say, plan, lines, findings, here: here && !sameData(here, findings) ? here : null };
  };
  return { pass: pass.map(run), fail: fail.map(run) };
}
