/** What the month would find if a class had another plan. */
import { FILL_WEIGHTS, type MonthFile, type MonthFinding, type MonthSlot, type PlanFacts } from "#lib/month/types.ts";
import { own } from "#lib/plan/lookup.ts";
import { withSlots } from "./preview.ts";

export interface TriedPlan {
  readonly plan: string;
  /** Weight of all that the month would find. */
  readonly cost: number;
  readonly gone: readonly MonthFinding[];
  readonly brought: readonly MonthFinding[];
}

/** Ids of the plans that can be given there: known, signed, for the room's machines, not longer than the class; by title. */
export function plansFor(month: MonthFile, slot: MonthSlot): string[] {
  const equipment = slot.room == null ? undefined : own(month.rooms, slot.room)?.equipment;
  const fits = (plan: PlanFacts) =>
    plan.signed && plan.seconds <= slot.minutes * 60 && (equipment === undefined || plan.equipment === equipment);
  return Object.entries(month.plans)
    .flatMap(([id, plan]) => (plan.known !== false && fits(plan) ? [{ id, title: plan.title }] : []))
    .sort((a, b) => (a.title < b.title ? -1 : a.title > b.title ? 1 : a.id < b.id ? -1 : 1))
    .map(({ id }) => id);
}

const costOf = (month: Pick<MonthFile, "weights">, findings: readonly MonthFinding[]): number => {
  const weights = { ...FILL_WEIGHTS, ...month.weights };
  return findings.reduce((sum, { level }) => sum + weights[level], 0);
};

type Look = (month: MonthFile) => { readonly findings: readonly MonthFinding[] };

/** `before`: what the month finds as it is. */
export function tryPlan(
  month: MonthFile,
  slot: MonthSlot,
  plan: string,
  { look, before }: { readonly look: Look; readonly before: readonly MonthFinding[] },
): TriedPlan {
  const { findings } = look(withSlots(month, [{ ...slot, plan }]));
  const [was, is] = [new Set(before.map(({ id }) => id)), new Set(findings.map(({ id }) => id))];
  return {
    plan,
    cost: costOf(month, findings),
    gone: before.filter(({ id }) => !is.has(id)),
    brought: findings.filter(({ id }) => !was.has(id)),
  };
}

/** The best first: least cost, then by title as they came. */
export const byCost = (a: TriedPlan, b: TriedPlan): number => a.cost - b.cost;
