/** Short recovery, for each muscle group and each two days near enough to each other. */
import { NOISE } from "#lib/numbers/round.ts";
import { GROUPS, type Group } from "#lib/plan/schema.ts";
import { workOf } from "../sums/plan-work.ts";
import { heavyFrom, isHeavy, SETS_THE_CLOCK } from "../sums/recovery.ts";
import { limitsOfMonth, type MonthLimits } from "../types.ts";
import { type Costing, type CostPart, type Picks, type Place, placesByDate, scopeOf, valuesOf } from "./parts.ts";

const MINUTE_MS = 60_000;

/** One day's work for one group. */
interface GroupDay {
  readonly places: readonly Place[];
  readonly heavy: (picks: Picks) => boolean;
  /** Whether it is so with any choice. */
  readonly able: boolean;
  /** End of the last and start of the first class that sets the clock; the day must be heavy. */
  readonly end: (picks: Picks) => number;
  readonly start: (picks: Picks) => number;
}

export function recoveryParts({ month, costOfRule }: Costing, places: readonly Place[]): CostPart[] {
  const flat = costOfRule("short-recovery");
  if (flat === 0) return [];
  const limits = limitsOfMonth(month);
  const days = placesByDate(places);
  return GROUPS.flatMap((group) => {
    const least = 60 * (limits.recoveryBy[group] ?? limits.recoveryHours);
    return pairParts(
      days.map((day) => groupDay(day, group, limits)).filter(({ able }) => able),
      least,
      flat,
    );
  });
}

/** `days`: those that may be heavy. */
function pairParts(days: readonly GroupDay[], least: number, flat: number): CostPart[] {
  const parts: CostPart[] = [];
  for (const [i, first] of days.entries()) {
    for (let j = i + 1; j < days.length; j++) {
      const second = days[j] as GroupDay;
      if (!mayBeShort(first, second, least)) continue;
      const between = days.slice(i + 1, j);
      const scope = scopeOf([first, ...between, second].flatMap((day) => day.places));
      if (scope.length > 0) parts.push({ scope, flat, cost: pairCost({ first, between, second }, least, flat) });
    }
  }
  return parts;
}

interface DayPair {
  readonly first: GroupDay;
  readonly between: readonly GroupDay[];
  readonly second: GroupDay;
}

function pairCost({ first, between, second }: DayPair, least: number, flat: number): CostPart["cost"] {
  return (picks) => {
    if (!first.heavy(picks) || !second.heavy(picks) || between.some((day) => day.heavy(picks))) return 0;
    return (second.start(picks) - first.end(picks)) / MINUTE_MS < least - NOISE ? flat : 0;
  };
}

function mayBeShort({ places: a }: GroupDay, { places: b }: GroupDay, least: number): boolean {
  const end = Math.max(...a.map(({ one }) => one.to));
  const start = Math.min(...b.map(({ one }) => one.from));
  return (start - end) / MINUTE_MS < least - NOISE;
}

function groupDay(day: readonly Place[], group: Group, limits: MonthLimits): GroupDay {
  const places = day.filter(({ plans }) => plans.some((plan) => workOf(plan, group) > 0));
  const work = valuesOf(places, (plan) => workOf(plan, group));
  const sets = heavyFrom(limits, group) * SETS_THE_CLOCK - NOISE;
  /** The first of the order that reaches a tenth of the limit, else the first with any work. */
  const setters = (picks: Picks): number[] => {
    const any = [...places.keys()].filter((i) => work.of(i, picks) > 0);
    const much = any.filter((i) => work.of(i, picks) >= sets);
    return much.length > 0 ? much : any;
  };
  return {
    places,
    able: isHeavy(limits, group, sum(work.most)),
    heavy: (picks) => isHeavy(limits, group, sum(places.map((_, i) => work.of(i, picks)))),
    end: (picks) => Math.max(...setters(picks).map((i) => places[i]?.one.to ?? 0)),
    start: (picks) => Math.min(...setters(picks).map((i) => places[i]?.one.from ?? 0)),
  };
}

const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);
