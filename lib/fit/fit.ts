/**
 * Fit to length: the times nearest to the authors' wishes with which the class ends exactly on time. Nearest means the least
 * sum of (seconds - wish)^2 / wish over the items that change, plus 2 for each whose last repetition is cut off. The answer
 * is the exact optimum, ties included.
 */
import { millionth, withoutNoise } from "#lib/numbers/round.ts";
import { headSeconds } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { bestSum } from "./best-sum.ts";
import { type FreeSeconds, type ImpossibleFit, sayEmpty, sayNoSolution, sayTooFine } from "./impossible-fit.ts";
import { latticeOf } from "./lattice.ts";
import { type FitProblem, fitProblem, repOf } from "./problem.ts";
import { variableCost } from "./values.ts";

/** Seconds. */
interface FitChange {
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
      /** Sum of (to - from)^2 / from over the items that the fit sets, plus 2 for each whose last repetition is cut off. */
      readonly cost: number;
      /** The closing plus what the grid leaves over, which is less than one grid step. */
      readonly closingSeconds: number;
      /** In plan order. */
      readonly changed: readonly FitChange[];
      /** Items that are outside their own bounds because their other side is locked. */
      readonly outside: readonly string[];
    }
  | ImpossibleFit;
export type PossibleFit = Fit & { readonly possible: true };

/**
 * The variables are the seconds of the move items that are not locked: whole grid steps, and whole repetitions to the
 * second, within the item's range, else its move's, else half to one and a half times the wish. Left and right of a move,
 * matched in order, get the same time. If one is locked, the other takes its seconds whatever its own bounds and counts as
 * fixed; if both are, both stay. Openings, pauses, transitions and locks are fixed. The variables fill the rest up to less
 * than a grid step, and the closing takes what is left.
 *
 * Of equally cheap answers, the one with the larger sum wins, then the one in which the earlier item is nearer to its wish.
 * Never throws. Cost: about the number of items times the range of seconds over which the best answers differ.
 */
export function fitToLength(plan: Plan): Fit {
  const problem = fitProblem(plan);
  const empty = problem.variables.filter((v) => latticeOf([v]) === null);
  if (empty.length > 0) return sayEmpty(plan, problem, empty);
  const room = roomOf(problem);
  const best = bestSum(problem.variables, room.least, room.most);
  if ("found" in best) return answer(plan, problem, best.found);
  return best.none === "too-fine" ? sayTooFine(problem) : sayNoSolution(plan, problem, room);
}

/** The seconds that the variables may add up to. Fractions of a second left by fixed times also go to the closing. */
function roomOf({ length, fixed, grid }: FitProblem): FreeSeconds {
  const most = millionth(length - fixed);
  return { least: Math.floor(most + 1e-6) - (grid - 1), most };
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

function answer(plan: Plan, problem: FitProblem, values: readonly number[]): PossibleFit {
  const to = new Map(problem.followers.map(({ place, seconds }) => [place, seconds]));
  let [filled, cost] = [0, followerCost(plan, problem)];
  problem.variables.forEach((variable, i) => {
    const seconds = values[i] ?? variable.low;
    filled += seconds * variable.spots.length;
    cost += variableCost(variable, seconds);
    for (const { place } of variable.spots) to.set(place, seconds);
  });
  const changed = plan.items.flatMap((item, place): FitChange[] => {
    const seconds = to.get(place);
    if (item.kind !== "move" || seconds === undefined || seconds === item.seconds) return [];
    return [{ item: item.id, from: item.seconds, to: seconds }];
  });
  return {
    possible: true,
    total: plan.lengthSeconds,
    cost: withoutNoise(cost),
    closingSeconds: millionth(closingOf(plan) + problem.length - problem.fixed - filled),
    changed,
    outside: problem.followers.filter((f) => f.outside).flatMap((f) => plan.items[f.place]?.id ?? []),
  };
}

/** The cost of the items that take the seconds of their locked other side. */
function followerCost(plan: Plan, { followers, grid }: FitProblem): number {
  return followers.reduce((sum, { place, seconds }) => {
    const item = plan.items[place];
    if (item?.kind !== "move") return sum;
    const spots = [{ place, wish: item.seconds }];
    return sum + variableCost({ spots, low: seconds, high: seconds, rep: repOf(plan, item), grid }, seconds);
  }, 0);
}
