/** What the same people's classes cost together: each pair of neighbours, each day, each two days, each week. */
import { NOISE } from "#lib/numbers/round.ts";
import { GROUPS } from "#lib/plan/schema.ts";
import { likeness } from "../sums/likeness.ts";
import { workOf } from "../sums/plan-work.ts";
import { isHeavy } from "../sums/recovery.ts";
import type { KnownPlan } from "../types.ts";
import { limitsOfMonth } from "../types.ts";
import { COST_UNIT } from "./fill-types.ts";
import { type Costing, type CostPart, type Place, pickOf, placesByDate, scopeOf, valuesOf } from "./parts.ts";
import { recoveryParts } from "./recovery-parts.ts";
import { weekParts } from "./week-parts.ts";

export function regularsParts(costing: Costing): CostPart[] {
  return Object.keys(costing.month.regulars).flatMap((id) => {
    const places = costing.places.filter(({ one }) => one.slot.regulars?.includes(id));
    return [
      ...neighbourParts(costing, places),
      ...heavyTwiceParts(costing, places),
      ...recoveryParts(costing, places),
      ...weekParts(costing, places),
    ];
  });
}

function neighbourParts(costing: Costing, places: readonly Place[]): CostPart[] {
  return places.slice(1).flatMap((b, i): CostPart[] => {
    const a = places[i];
    const scope = a ? scopeOf([a, b]) : [];
    if (!a || scope.length === 0) return [];
    const costs = a.plans.map((of) => b.plans.map((next) => likenessCost(costing, of, next)));
    return [{ scope, cost: (picks) => costs[pickOf(a, picks)]?.[pickOf(b, picks)] ?? 0 }];
  });
}

function likenessCost({ month, weights, costOfRule }: Costing, a?: KnownPlan, b?: KnownPlan): number {
  const alike = a && b ? likeness(a, b) : null;
  if (alike === null) return 0;
  const told = alike >= limitsOfMonth(month).likeMost - NOISE ? costOfRule("too-alike") : 0;
  return told + weights.likeness * Math.floor(COST_UNIT * alike + 0.5);
}

function heavyTwiceParts({ month, costOfRule }: Costing, places: readonly Place[]): CostPart[] {
  const flat = costOfRule("heavy-twice-a-day");
  if (flat === 0) return [];
  const limits = limitsOfMonth(month);
  return placesByDate(places).flatMap((day) =>
    GROUPS.flatMap((group): CostPart[] => {
      const heavy = valuesOf(day, (plan) => (isHeavy(limits, group, workOf(plan, group)) ? 1 : 0));
      const able = day.filter((_, i) => heavy.most[i] === 1);
      if (able.length < 2) return [];
      const scope = scopeOf(able);
      const count = (picks: Parameters<CostPart["cost"]>[0]) => day.reduce((sum, _, i) => sum + heavy.of(i, picks), 0);
      return scope.length === 0 ? [] : [{ scope, flat, cost: (picks) => (count(picks) >= 2 ? flat : 0) }];
    }),
  );
}
