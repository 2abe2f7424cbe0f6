/**
 * Fit to length: the durations nearest to the authors' wishes with which the class ends exactly on time. Nearest is the
 * least sum of (seconds - wish)^2 / wish over the items that change; the answer is the exact optimum, ties included.
 */
import { headSeconds } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { type FitProblem, fitProblem } from "./problem.ts";
import { sayEmpty, sayNoSolution } from "./say.ts";
import { shareOut } from "./share-out.ts";
import type { Variable } from "./steps.ts";

/** Seconds. */
export interface FitChange {
  readonly item: string;
  readonly from: number;
  readonly to: number;
}

/** All times in seconds. */
export type Fit =
  | {
      readonly possible: true;
      /** What the class takes afterwards: its length. */
      readonly total: number;
      /** Sum of (to - from)^2 / from over the changes. */
      readonly cost: number;
      /** The closing with what the grid leaves over, less than one grid step more than before. */
      readonly closingSeconds: number;
      /** In plan order. */
      readonly changed: readonly FitChange[];
      /** Items that the lock of their other side takes out of their own bounds. */
      readonly outside: readonly string[];
    }
  | {
      readonly possible: false;
      /** The class with every item as short, and as long, as it may be. */
      readonly shortest: number;
      readonly longest: number;
      /** Items whose bounds or locks are in the way, in plan order. */
      readonly stoppedBy: readonly string[];
      /** One sentence: what stops it and by how many seconds. */
      readonly say: string;
    };
export type PossibleFit = Fit & { readonly possible: true };
export type ImpossibleFit = Fit & { readonly possible: false };

/**
 * The variables are the seconds of the move items that are not locked, in whole grid steps, within the item's range, else
 * its move's, else half to one and a half times the wish, bounds rounded inwards. Left and right of a move, matched in
 * order, get the same; where one of them is locked the other takes its seconds whatever its own bounds and counts as
 * fixed, and where both are, both stay. Openings, pauses, transitions and locks are fixed; the variables fill the rest to
 * the last whole grid step and the closing takes what is left.
 *
 * Of equally cheap answers the one in which the earlier item is nearer to its wish. Never throws. Cost: about the number
 * of grid steps given out times the logarithm of the number of items.
 */
export function fitToLength(plan: Plan): Fit {
  const problem = fitProblem(plan);
  const variables = [...problem.singles, ...problem.pairs];
  const empty = variables.filter((v) => v.low > v.high);
  if (empty.length > 0) return sayEmpty(plan, problem, empty);
  const least = variables.reduce((sum, v) => sum + v.low * v.spots.length, 0);
  const steps = Math.floor((problem.length - problem.fixed) / problem.grid);
  const values = shareOut(problem, steps - least);
  return values ? answer(plan, problem, values) : sayNoSolution(plan, problem, steps);
}

/** The plan with the new seconds and the new closing; everything else is the same object. */
export function fittedPlan(plan: Plan, fit: PossibleFit): Plan {
  const to = new Map(fit.changed.map((change) => [change.item, change.to]));
  const items = plan.items.map((item) => {
    const seconds = to.get(item.id);
    return seconds === undefined || item.kind !== "move" ? item : { ...item, seconds };
  });
  const closing = fit.closingSeconds === closingOf(plan) ? {} : { closingSeconds: fit.closingSeconds };
  return { ...plan, ...closing, items };
}

const closingOf = (plan: Plan): number => headSeconds(plan, "closingSeconds");

function answer(plan: Plan, problem: FitProblem, values: ReadonlyMap<Variable, number>): PossibleFit {
  const to = new Map(problem.followers.map(({ place, seconds }) => [place, seconds]));
  let filled = 0;
  for (const [variable, steps] of values) {
    filled += steps * problem.grid * variable.spots.length;
    for (const { place } of variable.spots) to.set(place, (steps * problem.grid) / problem.perSecond);
  }
  const left = (problem.length - problem.fixed - filled) / problem.perSecond;
  const changed = plan.items.flatMap((item, place): FitChange[] => {
    const seconds = to.get(place);
    if (item.kind !== "move" || seconds === undefined || seconds === item.seconds) return [];
    return [{ item: item.id, from: item.seconds, to: seconds }];
  });
  return {
    possible: true,
    total: plan.lengthSeconds,
    cost: clean(changed.reduce((sum, { from, to }) => sum + (to - from) ** 2 / from, 0)),
    closingSeconds: clean(closingOf(plan) + left),
    changed,
    outside: problem.followers.filter((f) => f.outside).flatMap((f) => plan.items[f.place]?.id ?? []),
  };
}

/** Cuts the noise of binary fractions. */
const clean = (x: number): number => Math.round(x * 1e9) / 1e9;
