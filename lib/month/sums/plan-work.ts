/** What one plan gives, worked out once for each plan. */
import { perValue } from "#lib/memo/per-value.ts";
import { GROUPS, type Group } from "#lib/plan/schema.ts";
import type { PlanFacts } from "../types.ts";

export interface PlanWork {
  /** Seconds x weight, in the order of `GROUPS`. */
  readonly byGroup: readonly number[];
  /** Of all groups. */
  readonly seconds: number;
  /** Moves with seconds, sorted by id. */
  readonly moves: readonly { readonly id: string; readonly seconds: number }[];
}

export const planWork = perValue(({ groups, moves }: PlanFacts): PlanWork => {
  const byGroup = GROUPS.map((group) => groups[group] ?? 0);
  return {
    byGroup,
    seconds: byGroup.reduce((sum, s) => sum + s, 0),
    moves: Object.entries(moves)
      .filter(([, s]) => s > 0)
      .map(([id, s]) => ({ id, seconds: s }))
      .sort((a, b) => (a.id < b.id ? -1 : 1)),
  };
});

export const workOf = (plan: PlanFacts | undefined, group: Group): number => plan?.groups[group] ?? 0;

/** The share of a group in a class's work; 0 for a class without any. */
export function shareOf(plan: PlanFacts, group: Group): number {
  const { seconds } = planWork(plan);
  return seconds > 0 ? workOf(plan, group) / seconds : 0;
}
