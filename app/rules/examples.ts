/** A rule's examples with what the rule finds in each: always run, never copied. Pure. */

import { checkPlan } from "#lib/analysis/check-plan.ts";
import { sameData } from "#lib/plan/same-data.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { AnyRule, Finding } from "#lib/rules/define/types.ts";
import { examplesOf } from "#lib/rules/examples.ts";
import type { StudioStandard } from "#lib/rules/studio-standard.ts";
import { saysSomethingElse } from "./excerpt.ts";

interface RunExample {
  readonly say: string;
  readonly plan: Plan;
  /** The rule is about what is said. */
  readonly lines: boolean;
  /** With the usual level and limits. */
  readonly findings: readonly Finding[];
  /** With the studio's; null where they are the same. */
  readonly here: readonly Finding[] | null;
}

export function ruleExamples(
  rule: AnyRule,
  standard: StudioStandard | null,
): { pass: RunExample[]; fail: RunExample[] } {
  const { pass, fail } = examplesOf(rule);
  const lines = saysSomethingElse([...pass, ...fail].map(({ plan }) => plan));
  const run = ({ say, plan }: { say: string; plan: Plan }): RunExample => {
    const { findings } = checkPlan(plan, [rule]);
    const here = standard && checkPlan({ ...plan, standards: { [rule.id]: standard } }, [rule]).findings;
    return { say, plan, lines, findings, here: here && !sameData(here, findings) ? here : null };
  };
  return { pass: pass.map(run), fail: fail.map(run) };
}
