/** A week that rises much over the one before, and a week with few moves. */
import { NOISE } from "#lib/numbers/round.ts";
import { type MonthWeek, weeksOf } from "../instants.ts";
import { planWork } from "../sums/plan-work.ts";
import { limitsOfMonth } from "../types.ts";
import { type Costing, type CostPart, type Picks, type Place, pickOf, scopeOf, valuesOf } from "./parts.ts";

export function weekParts(costing: Costing, places: readonly Place[]): CostPart[] {
  const weeks = weeksOf(costing.month).map((week) => ({ week, places: placesIn(week, places) }));
  return weeks.flatMap(({ week, places: own }, i) => {
    const last = weeks[i - 1];
    const compared = last?.week.whole && week.whole;
    return [...(compared ? risePart(costing, last.places, own) : []), ...(week.whole ? varietyPart(costing, own) : [])];
  });
}

const placesIn = ({ from, to }: MonthWeek, places: readonly Place[]): Place[] =>
  places.filter(({ one }) => one.date >= from && one.date <= to);

/** Whether a finding about the week is told: one of its classes with a plan is late enough. */
const isToldOf =
  ({ since }: Costing, places: readonly Place[]) =>
  (picks: Picks): boolean =>
    places.some((place) => place.one.date >= since && place.plans[pickOf(place, picks)] !== undefined);

function risePart(costing: Costing, before: readonly Place[], own: readonly Place[]): CostPart[] {
  const flat = costing.costOfRule("week-rises-much");
  const scope = scopeOf([...before, ...own]);
  if (flat === 0 || scope.length === 0) return [];
  const most = limitsOfMonth(costing.month).riseMost + NOISE;
  const [was, is] = [before, own].map((places) => valuesOf(places, (plan) => planWork(plan).seconds)) as [
    Values,
    Values,
  ];
  const told = isToldOf(costing, own);
  const cost = (picks: Picks): number => {
    const last = before.reduce((sum, _, i) => sum + was.of(i, picks), 0);
    const seconds = own.reduce((sum, _, i) => sum + is.of(i, picks), 0);
    return last > 0 && (seconds - last) / last > most && told(picks) ? flat : 0;
  };
  return [{ scope, flat, cost }];
}
type Values = ReturnType<typeof valuesOf>;

const LEAST_CLASSES = 2;
const BITS = 32;

function varietyPart(costing: Costing, places: readonly Place[]): CostPart[] {
  const flat = costing.costOfRule("little-variety");
  const scope = scopeOf(places);
  if (flat === 0 || scope.length === 0 || places.length < LEAST_CLASSES) return [];
  const least = limitsOfMonth(costing.month).varietyLeast - NOISE;
  const sets = moveSets(places);
  const words = Math.max(0, ...sets.flat().map((set) => set.length));
  const all = new Int32Array(words);
  const told = isToldOf(costing, places);
  const cost = (picks: Picks): number => {
    all.fill(0);
    let planned = 0;
    for (let i = 0; i < places.length; i++) {
      const place = places[i] as Place;
      const pick = pickOf(place, picks);
      if (place.plans[pick] === undefined) continue;
      planned++;
      const set = sets[i]?.[pick];
      for (let w = 0; set && w < set.length; w++) all[w] = (all[w] ?? 0) | (set[w] ?? 0);
    }
    return planned >= LEAST_CLASSES && bitsOf(all) < least && told(picks) ? flat : 0;
  };
  return [{ scope, flat, cost }];
}

/** The moves of every plan that each place may have, as bits. */
function moveSets(places: readonly Place[]): Int32Array[][] {
  const number = new Map<string, number>();
  for (const { plans } of places) {
    for (const plan of plans) for (const [move] of plan ? planWork(plan).moves : []) numberOf(number, move);
  }
  const words = Math.ceil(number.size / BITS);
  return places.map(({ plans }) =>
    plans.map((plan) => {
      const set = new Int32Array(words);
      for (const [move] of plan ? planWork(plan).moves : []) {
        const n = numberOf(number, move);
        set[n >> 5] = (set[n >> 5] ?? 0) | (1 << (n & 31));
      }
      return set;
    }),
  );
}

function numberOf(numbers: Map<string, number>, move: string): number {
  const n = numbers.get(move) ?? numbers.size;
  numbers.set(move, n);
  return n;
}

function bitsOf(words: Int32Array): number {
  let count = 0;
  for (let word of words) for (; word !== 0; word &= word - 1) count++;
  return count;
}
