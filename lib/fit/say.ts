/** Why a class cannot be fitted to its length, in one sentence with its seconds. */
import { itemName, plural, secondsWords } from "#lib/plan/format.ts";
import { moveItems } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { ImpossibleFit } from "./fit.ts";
import type { FitProblem } from "./problem.ts";
import type { Variable } from "./steps.ts";

/** Some items have no whole grid step within their bounds, or two sides have none in common. */
export function sayEmpty(plan: Plan, problem: FitProblem, empty: readonly Variable[]): ImpossibleFit {
  const grid = secondsWords(problem.grid / problem.perSecond);
  const [first] = [...empty].sort((a, b) => placeOf(a) - placeOf(b));
  const names = (first?.spots ?? []).map(({ place }) => nameAt(plan, place));
  const more = empty.length > 1 ? `, and ${plural(empty.length - 1, "more is", "more are")} like that` : "";
  const say =
    names.length > 1
      ? `${names.join(" and ")} must get the same time, but their bounds share no whole step of ${grid}${more}.`
      : `${names[0] ?? ""} has no whole step of ${grid} between its shortest and its longest time${more}.`;
  return { possible: false, ...extremes(problem), stoppedBy: idsOf(plan, empty), say };
}

/** The bounds leave too much or too little, or only pairs may change and a single step is left over. */
export function sayNoSolution(plan: Plan, problem: FitProblem, steps: number): ImpossibleFit {
  const { shortest, longest } = extremes(problem);
  const variables = [...problem.singles, ...problem.pairs];
  const stop = (stoppedBy: readonly string[], say: string): ImpossibleFit => {
    return { possible: false, shortest, longest, stoppedBy, say };
  };
  if (variables.length === 0) {
    const apart = shortest - problem.length / problem.perSecond;
    return stop(lockedIds(plan), `Nothing in the class may change: it takes ${takes(shortest, apart)}.`);
  }
  for (const [end, total, word] of [
    ["low", shortest, "shortest"],
    ["high", longest, "longest"],
  ] as const) {
    const ends = variables.reduce((sum, v) => sum + v[end] * v.spots.length, 0);
    if (end === "low" ? steps >= ends : steps <= ends) continue;
    const apart = total - problem.length / problem.perSecond;
    return stop(idsOf(plan, variables), `Even with everything at its ${word} the class takes ${takes(total, apart)}.`);
  }
  const grid = secondsWords(problem.grid / problem.perSecond);
  const free = variables.filter((v) => v.low < v.high);
  const say = `Only both sides of a move together may change, ${grid} each, and ${grid} are left over: free an item or change a fixed time by ${grid}.`;
  return stop(idsOf(plan, free), say);
}

/** "31:00 min, 60 s more than its slot". */
const takes = (total: number, apart: number): string =>
  `${secondsWords(total)}, ${secondsWords(Math.abs(apart))} ${apart > 0 ? "more" : "less"} than its slot`;

/** Seconds of the class with everything at one end; what has no value between its ends takes the nearest beside them. */
function extremes(problem: FitProblem): { shortest: number; longest: number } {
  const total = (end: (v: Variable) => number): number => {
    const steps = [...problem.singles, ...problem.pairs].reduce((sum, v) => sum + end(v) * v.spots.length, 0);
    return (steps * problem.grid + problem.fixed) / problem.perSecond;
  };
  return { shortest: total((v) => Math.min(v.low, v.high)), longest: total((v) => Math.max(v.low, v.high)) };
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
