/**
 * The cost of a filling in parts: each looks at few of the slots to fill, so that a changed choice asks few of them again.
 * A part's cost is at least 0, in whole ten-thousandths. Costs that no choice changes are in no part.
 */

import { judgingOf, toldFrom } from "../check/judge.ts";
import type { MonthClass } from "../sums-types.ts";
import type { KnownPlan, MonthFile, MonthLevel } from "../types.ts";
import { FILL_WEIGHTS, type FillWeights } from "../types.ts";
import { COST_UNIT } from "./fill-types.ts";
import type { OpenSlot } from "./open-slots.ts";

/** For each slot to fill the number of its choice. */
export type Picks = Int32Array;

export interface CostPart {
  /** Numbers of the slots to fill that it looks at, ascending; at least one. */
  readonly scope: readonly number[];
  readonly cost: (picks: Picks) => number;
  /** The most it may cost, where that is the same each time it costs anything. */
  readonly flat?: number;
}

/** A class with the plans that it may have: one where nothing is to be chosen. */
export interface Place {
  readonly one: MonthClass;
  /** Number of the slot to fill, or -1. */
  readonly open: number;
  readonly plans: readonly (KnownPlan | undefined)[];
}

/** What parts are made from. */
export interface Costing {
  readonly month: MonthFile;
  readonly weights: FillWeights;
  readonly since: string;
  readonly places: readonly Place[];
  /** Ten-thousandths that one finding of a rule costs. */
  readonly costOfRule: (rule: string) => number;
}

export function costingOf(month: MonthFile, classes: readonly MonthClass[], open: readonly OpenSlot[]): Costing {
  const number = new Map(open.map(({ one }, i) => [one.id, i]));
  const places = classes.map((one): Place => {
    const i = number.get(one.id) ?? -1;
    return { one, open: i, plans: open[i]?.plans ?? [one.plan] };
  });
  const weights = { ...FILL_WEIGHTS, ...month.weights };
  const levels = new Map<string, MonthLevel>(judgingOf(month).rules.map(({ rule, level }) => [rule.id, level]));
  const costOfRule = (rule: string): number => {
    const level = levels.get(rule);
    return level === undefined ? 0 : COST_UNIT * weights[level];
  };
  return { month, weights, since: toldFrom(month), places, costOfRule };
}

/** The number of the place's plan among `plans`. */
export const pickOf = ({ open }: Place, picks: Picks): number => (open < 0 ? 0 : (picks[open] ?? 0));

export const scopeOf = (places: readonly Place[]): number[] =>
  [...new Set(places.flatMap(({ open }) => (open < 0 ? [] : [open])))].sort((a, b) => a - b);

/** A number of each plan that a place may have, worked out once. */
export function valuesOf(
  places: readonly Place[],
  of: (plan: KnownPlan) => number,
): { readonly of: (i: number, picks: Picks) => number; readonly most: readonly number[] } {
  const values = places.map(({ plans }) => plans.map((plan) => (plan ? of(plan) : 0)));
  return {
    of: (i, picks) => {
      const place = places[i];
      return place ? (values[i]?.[pickOf(place, picks)] ?? 0) : 0;
    },
    most: values.map((list) => Math.max(...list)),
  };
}

/** Days in order; the places of each by start, then id. */
export function placesByDate(places: readonly Place[]): Place[][] {
  const days = new Map<string, Place[]>();
  for (const place of places) days.set(place.one.date, [...(days.get(place.one.date) ?? []), place]);
  return [...days].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, day]) => day);
}
