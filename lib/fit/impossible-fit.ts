/** Why a class cannot be fitted to its length, in one sentence with the seconds. */
import { millionth } from "#lib/numbers/round.ts";
import { itemName, plural, secondsWords } from "#lib/plan/format.ts";
import { moveItems } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { latticeOf } from "./lattice.ts";
import type { FitProblem } from "./problem.ts";
import { type Variable, valuesWithin } from "./values.ts";

/** A class that cannot be fitted, and why. All times in seconds. */
export interface ImpossibleFit {
  readonly possible: false;
  /** The class with every item at its shortest, and at its longest. */
  readonly shortest: number;
  readonly longest: number;
  /** Items whose bounds or locks are in the way, in plan order. */
  readonly stoppedBy: readonly string[];
  /** One sentence: what is in the way, and by how many seconds. */
  readonly say: string;
}

/** The seconds that the changeable items can add up to. */
export interface FreeSeconds {
  readonly least: number;
  readonly most: number;
}

/** Some items have no possible time within their bounds, or two sides have none in common. */
export function sayEmpty(plan: Plan, problem: FitProblem, empty: readonly Variable[]): ImpossibleFit {
  const grid = secondsWords(problem.grid);
  const [first] = [...empty].sort((a, b) => placeOf(a) - placeOf(b));
  const names = (first?.spots ?? []).map(({ place }) => nameAt(plan, place));
  const steps = first?.rep == null ? `whole step of ${grid}` : `whole step of ${grid} and no whole repetition`;
  const more = empty.length > 1 ? `, and ${plural(empty.length - 1, "more is", "more are")} like that` : "";
  const say =
    names.length > 1
      ? `${names.join(" and ")} must get the same time, but their bounds share no ${steps}${more}.`
      : `${names[0] ?? ""} has no ${steps} between its shortest and its longest time${more}.`;
  return { possible: false, ...extremes(problem), stoppedBy: idsOf(plan, empty), say };
}

/** The bounds leave too much or too little, or no sum of the possible times fills the class. */
export function sayNoSolution(plan: Plan, problem: FitProblem, room: FreeSeconds): ImpossibleFit {
  const { shortest, longest } = extremes(problem);
  const stop = (stoppedBy: readonly string[], say: string): ImpossibleFit => {
    return { possible: false, shortest, longest, stoppedBy, say };
  };
  const apart = (total: number): string => takes(total, total - problem.length);
  if (problem.variables.length === 0)
    return stop(lockedIds(plan), `Nothing in the class may change: it takes ${apart(shortest)}.`);
  const all = idsOf(plan, problem.variables);
  if (shortest - problem.fixed > room.most)
    return stop(all, `Even with everything at its shortest the class takes ${apart(shortest)}.`);
  if (longest - problem.fixed < room.least)
    return stop(all, `Even with everything at its longest the class takes ${apart(longest)}.`);
  return stop(idsOf(plan, problem.variables.filter(isFree)), leftOver(problem));
}

/** The times combine to more sums than can be gone through: only where the grid is a fine fraction or the ranges are vast. */
export function sayTooFine(problem: FitProblem): ImpossibleFit {
  const say = `The moves may take too many different times to find the best: use a grid of whole seconds, or narrower ranges. The grid is ${problem.grid} s now.`;
  return { possible: false, ...extremes(problem), stoppedBy: [], say };
}

const isFree = (v: Variable): boolean => valuesWithin(v, v.low, v.high).length > 1;

function leftOver({ variables, grid }: FitProblem): string {
  const step = secondsWords(grid);
  const free = variables.filter(isFree);
  return free.every((v) => v.spots.length > 1)
    ? `Only both sides of a move together may change, and no step of both fills the class: free an item or change a fixed time by ${step}.`
    : `The times that the moves may have, steps of ${step} and whole repetitions, do not add up to what is left: free an item or change a fixed time by ${step}.`;
}

/** "31 min, 60 s more than its slot". */
const takes = (total: number, apart: number): string =>
  `${secondsWords(total)}, ${secondsWords(Math.abs(apart))} ${apart > 0 ? "more" : "less"} than its slot`;

/** Seconds of the class with everything at one end; an item without a possible time counts with its bound. */
function extremes({ variables, fixed }: FitProblem): { shortest: number; longest: number } {
  const ends = variables.map((v) => latticeOf([v]) ?? boundSums(v));
  const sum = (of: (end: { least: number; greatest: number }) => number): number =>
    millionth(ends.reduce((total, end) => total + of(end), fixed));
  return { shortest: sum((end) => end.least), longest: sum((end) => end.greatest) };
}

function boundSums({ low, high, spots }: Variable): { least: number; greatest: number } {
  return { least: Math.min(low, high) * spots.length, greatest: Math.max(low, high) * spots.length };
}

const placeOf = (v: Variable): number => v.spots[0]?.place ?? 0;

function nameAt(plan: Plan, place: number): string {
  const item = plan.items[place];
  return item ? itemName(plan, item) : "";
}

function idsOf(plan: Plan, variables: readonly Variable[]): string[] {
  const places = variables.flatMap((v) => v.spots.map((spot) => spot.place)).sort((a, b) => a - b);
  return places.flatMap((place) => plan.items[place]?.id ?? []);
}

const lockedIds = (plan: Plan): string[] => moveItems(plan).map((item) => item.id);
