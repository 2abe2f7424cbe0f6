/** What a house standard would change in the team's plans as they stand, counted before it is kept. For managers. */
import { listPlanRows, type PlanRow } from "#db/repos/plan-repo.ts";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import type { FindingLevel, Plan } from "#lib/plan/schema.ts";
import type { Actor } from "#lib/policy/can.ts";
import type { AnyRule } from "#lib/rules/define/types.ts";
import { checkStandard, type StudioStandard } from "#lib/rules/studio-standard.ts";
import { withPlan } from "#server/plans/plan-doc.ts";
import { fail, ok, type Result } from "#server/result.ts";
import type { Springline } from "#server/springline.ts";
import { mayChange } from "./change-standard.ts";

/** Each is read whole: the newest say enough. */
const MOST_PLANS = 40;

export type LevelCounts = Readonly<Record<FindingLevel, number>>;
export interface StandardTrial {
  /** How many plans of the team were looked at: those not deleted. */
  readonly plans: number;
  readonly before: LevelCounts;
  readonly after: LevelCounts;
}

/** Only numbers: a manager need not be somebody who may read the plans. Errors: 403, 404, 422 bad-limit. */
export function tryStandard(
  app: Springline,
  actor: Actor,
  ruleId: string,
  wanted: StudioStandard,
): Result<StandardTrial> {
  const allowed = mayChange(app, actor, ruleId);
  if (!allowed.ok) return allowed;
  const { rule } = allowed.value;
  const checked = checkStandard(rule, wanted);
  if (!checked.ok) return fail(422, "bad-limit", checked.say, { limit: checked.limit });
  const rows = listPlanRows(app.db).filter((row) => row.team && row.deletedAt === null);
  const plans = rows.slice(0, MOST_PLANS).flatMap((row) => housePlan(app, row) ?? []);
  const after = plans.map((plan) => ({ ...plan, standards: { [ruleId]: checked.standard ?? {} } }));
  return ok({ plans: plans.length, before: count(rule, plans), after: count(rule, after) });
}

/** Undefined for a plan that cannot be read just now. */
function housePlan(app: Springline, row: PlanRow): Plan | undefined {
  const read = withPlan(app, row, ({ plan }) => ok(plan));
  return read.ok ? read.value : undefined;
}

function count(rule: AnyRule, plans: readonly Plan[]): LevelCounts {
  const counts = { must: 0, look: 0, info: 0 };
  for (const plan of plans) {
    for (const finding of checkPlan(plan, [rule]).findings) if (finding.rule === rule.id) counts[finding.level]++;
  }
  return counts;
}
