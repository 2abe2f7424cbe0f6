/**
 * A good choice where there are too many to look at all: a few slots at a time are chosen again, exactly, with the rest
 * held, until no few of them can be chosen better. Which few: each alone, those that share a part of the cost, and others
 * in an order that a fixed rule mixes. Counted in steps, so that one month has one answer.
 */
import { seededRandom } from "#lib/order/random.ts";
import { searchExactly } from "./exact.ts";
import type { Picks } from "./parts.ts";
import { type FillProblem, product, type Uses } from "./problem.ts";
import { type Term, termsOf } from "./tables.ts";

/** Few enough to be chosen again at once. */
const TOGETHER = 3;
const CHOICES_MOST = 1_000;
const MIXED_GROUPS = 300;

export interface LocalSearch {
  readonly problem: FillProblem;
  readonly terms: readonly Term[];
  /** Must be allowed. */
  readonly begin: Picks;
  readonly mostSteps: number;
}

/** The cheapest choice found, never dearer than where it begins; `cost` is that of the terms. */
export function searchLocally({ problem, terms, begin, mostSteps }: LocalSearch): { picks: Picks; cost: number } {
  const groups = groupsOf(problem.sizes, terms);
  const touching = problem.sizes.map((_, slot) => terms.filter(({ scope }) => scope.includes(slot)));
  let picks = begin;
  let [steps, since] = [0, 0];
  for (let at = 0; since < groups.length && steps < mostSteps; at = (at + 1) % groups.length) {
    const slots = groups[at] ?? [];
    const found = chosenAgain({ problem, touching, picks }, slots);
    steps += found.steps;
    since = found.picks ? 0 : since + 1;
    picks = found.picks ?? picks;
  }
  return { picks, cost: terms.reduce((sum, { cost }) => sum + cost(picks), 0) };
}

interface Held {
  readonly problem: FillProblem;
  readonly touching: readonly (readonly Term[])[];
  readonly picks: Picks;
}

function chosenAgain({ problem: { sizes, uses }, touching, picks }: Held, slots: readonly number[]) {
  const terms = [...new Set(slots.flatMap((slot) => touching[slot] ?? []))];
  const scratch = picks.slice();
  const parts = terms.map(({ scope, cost }) => ({
    scope: scope.filter((i) => slots.includes(i)),
    cost: (tried: Picks): number => {
      for (const slot of slots) scratch[slot] = tried[slot] ?? 0;
      return cost(scratch);
    },
  }));
  const under = terms.reduce((sum, { cost }) => sum + cost(picks), 0);
  const own = termsOf(parts, sizes);
  const left = { ...uses, room: roomBeside(uses, picks, slots) };
  const search = { slots, sizes, terms: own, uses: left, picks, under, mostSteps: Number.POSITIVE_INFINITY };
  const found = searchExactly(search);
  const worked = own.reduce((sum, { scope }) => sum + product(scope.map((i) => sizes[i] ?? 1)), 0);
  return { picks: found.picks, steps: found.steps + worked };
}

/** How often each plan may stand in `slots`, with the others held. */
function roomBeside({ planOf, room }: Uses, picks: Picks, slots: readonly number[]): number[] {
  const left = [...room];
  for (const [i, pick] of picks.entries()) {
    const plan = planOf[i]?.[pick] ?? -1;
    if (plan >= 0 && !slots.includes(i)) left[plan] = (left[plan] ?? 0) - 1;
  }
  return left;
}

function groupsOf(sizes: readonly number[], terms: readonly Term[]): number[][] {
  const all = [...sizes.keys()].filter((i) => (sizes[i] ?? 0) > 1);
  const alone = all.map((i) => [i]);
  const shared = terms.map(({ scope }) => scope.filter((i) => (sizes[i] ?? 0) > 1)).filter(({ length }) => length > 1);
  const few = shared.map((scope) => scope.slice(0, TOGETHER));
  const groups = [...alone, ...few, ...mixed(all)].map((slots) => enough(slots, sizes));
  return [...new Map(groups.map((slots) => [slots.join(), slots])).values()];
}

/** Only as many of the slots as have not too many choices together. */
function enough(slots: readonly number[], sizes: readonly number[]): number[] {
  const kept: number[] = [];
  for (const slot of slots) {
    if (kept.length === 0 || product([...kept, slot].map((i) => sizes[i] ?? 1)) <= CHOICES_MOST) kept.push(slot);
  }
  return kept;
}

/** Threes from all over the month. */
function mixed(slots: readonly number[]): number[][] {
  const random = seededRandom(slots.length);
  const next = (): number => slots[Math.floor(random() * slots.length)] ?? 0;
  if (slots.length < 2) return [];
  return Array.from({ length: MIXED_GROUPS }, () => [...new Set([next(), next(), next()])].sort((a, b) => a - b));
}
