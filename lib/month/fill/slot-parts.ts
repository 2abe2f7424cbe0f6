/** What one slot's choice costs by itself, and the wishes for it. */
import { withPlan } from "../check/classes.ts";
import { foundIn, judgingOf } from "../check/judge.ts";
import { slotPartOf } from "../check/parts-of.ts";
import { COST_UNIT } from "./fill-types.ts";
import type { OpenSlot } from "./open-slots.ts";
import type { Costing, CostPart } from "./parts.ts";

export function slotParts({ month, weights }: Costing, open: readonly OpenSlot[]): CostPart[] {
  const judging = judgingOf(month);
  return open.map(({ one, choices }, i): CostPart => {
    const costs = choices.map((plan) => {
      const found = foundIn("slot", slotPartOf(month, withPlan(one, plan, month.plans)), judging);
      const ofFindings = found.reduce((sum, { level }) => sum + weights[level], 0);
      const missed = (month.fill?.wishes ?? []).filter((wish) => wish.slot === one.id && wish.plan !== plan);
      return COST_UNIT * (ofFindings + missed.reduce((sum, { weight }) => sum + (weight ?? weights.wish), 0));
    });
    return { scope: [i], cost: (picks) => costs[picks[i] ?? 0] ?? 0 };
  });
}
