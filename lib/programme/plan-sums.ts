/** What a month needs of a plan: the sums of its class, from the same analysis that the plan's page shows. */
import { PlanAnalyst } from "#lib/analysis/analysis.ts";
import { classIntensity } from "#lib/intensity/intensity.ts";
import type { PlanFacts } from "#lib/month/types.ts";
import { moveItems } from "#lib/plan/lookup.ts";
import type { Group, Plan } from "#lib/plan/schema.ts";

/** What does not depend on who signed it and in which room it is. */
export type PlanSums = Omit<PlanFacts, "known" | "signed" | "edition" | "sha256" | "equipment">;

/** Nothing is rounded. */
export function planSums(plan: Plan): PlanSums {
  const { clock, balance, track } = new PlanAnalyst([]).of(plan);
  const groups: Partial<Record<Group, number>> = {};
  for (const [group, { seconds }] of Object.entries(balance.groups)) groups[group as Group] = seconds;
  const moves: Record<string, number> = {};
  for (const { move, seconds } of moveItems(plan)) moves[move] = (moves[move] ?? 0) + seconds;
  return {
    title: plan.title,
    seconds: clock.total,
    groups,
    moves,
    push: balance.push,
    pull: balance.pull,
    metMinutes: classIntensity(plan).metMinutes,
    talkSeconds: track.talkSeconds,
  };
}
