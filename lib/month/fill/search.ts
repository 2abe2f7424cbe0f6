/** The search for the cheapest choice: exact where there are few enough, else by parts that do not touch, else the best found. */
import { searchExactly } from "./exact.ts";
import { EXACT_MOST } from "./fill-types.ts";
import { searchLocally } from "./local.ts";
import type { Picks } from "./parts.ts";
import { emptyPicks, type FillProblem, isAllowed } from "./problem.ts";
import { type Term, termsOf } from "./tables.ts";

export interface FoundFill {
  readonly picks: Picks;
  /** Of everything. */
  readonly cost: number;
  readonly proven: boolean;
  /** No choice costs less. */
  readonly bound: number;
}

const LOCAL_STEPS = 2_000_000;
/** Of each island. */
const ISLAND_STEPS = 300_000;

export function searchFill(problem: FillProblem): FoundFill {
  const terms = termsOf(problem.parts, problem.sizes);
  const begin = emptyPicks(problem.sizes);
  const few = problem.choices <= EXACT_MOST;
  const near = searchLocally({ problem, terms, begin, mostSteps: few ? EXACT_MOST : LOCAL_STEPS });
  return few ? exactly(problem, terms, near) : byIslands(problem, terms, near);
}

type Near = ReturnType<typeof searchLocally>;

/** The cheaper of `best` and what is found from `picks` on; `picks` must be allowed. */
export function betterNear(problem: FillProblem, best: FoundFill, picks: Picks): FoundFill {
  if (!isAllowed(problem.uses, picks)) return best;
  const terms = termsOf(problem.parts, problem.sizes);
  const near = searchLocally({ problem, terms, begin: picks, mostSteps: LOCAL_STEPS });
  const cost = problem.fixed + near.cost;
  return cost < best.cost ? { ...best, picks: near.picks, cost, proven: cost <= best.bound } : best;
}

function exactly({ sizes, uses, fixed }: FillProblem, terms: readonly Term[], near: Near): FoundFill {
  const slots = [...sizes.keys()];
  // One more than what is already found, so that the first of all that cost the same is found again.
  const under = near.cost + 1;
  const search = { slots, sizes, terms, uses, picks: emptyPicks(sizes), under, mostSteps: Number.POSITIVE_INFINITY };
  const found = searchExactly(search);
  const cost = fixed + found.cost;
  return { picks: found.picks ?? near.picks, cost, proven: true, bound: cost };
}

/** Slots that share no part of the cost are chosen apart; together they are proven when every plan stays within its uses. */
function byIslands(problem: FillProblem, terms: readonly Term[], near: Near): FoundFill {
  const { sizes, uses, fixed } = problem;
  const free = { planOf: uses.planOf.map((plans) => plans.map(() => -1)), room: [] };
  const picks = near.picks.slice();
  let [bound, whole] = [0, true];
  for (const slots of islandsOf(sizes, terms)) {
    const own = terms.filter(({ scope }) => slots.includes(scope[0] ?? -1));
    const held = own.reduce((sum, { cost }) => sum + cost(near.picks), 0);
    const search = { slots, sizes, terms: own, uses: free, picks: near.picks, under: held, mostSteps: ISLAND_STEPS };
    const found = searchExactly(search);
    for (const slot of slots) picks[slot] = found.picks?.[slot] ?? picks[slot] ?? 0;
    bound += found.whole ? found.cost : own.reduce((sum, { least }) => sum + (least?.[0]?.[0] ?? 0), 0);
    whole &&= found.whole;
  }
  const apart = isAllowed(uses, picks) ? { picks, cost: terms.reduce((sum, { cost }) => sum + cost(picks), 0) } : near;
  const best = apart.cost < near.cost ? apart : near;
  const proven = whole && best.cost === bound;
  return { picks: best.picks, cost: fixed + best.cost, proven, bound: fixed + bound };
}

function islandsOf(sizes: readonly number[], terms: readonly Term[]): number[][] {
  const island = [...sizes.keys()];
  const rootOf = (i: number): number => {
    let at = i;
    while (island[at] !== undefined && island[at] !== at) at = island[at] ?? at;
    return at;
  };
  for (const { scope } of terms) {
    for (const i of scope) {
      const [a, b] = [rootOf(scope[0] ?? i), rootOf(i)];
      island[Math.max(a, b)] = Math.min(a, b);
    }
  }
  const islands = new Map<number, number[]>();
  for (const i of sizes.keys()) islands.set(rootOf(i), [...(islands.get(rootOf(i)) ?? []), i]);
  return [...islands.values()];
}
