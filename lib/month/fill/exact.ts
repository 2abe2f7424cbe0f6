/**
 * The cheapest choice by depth first, slot by slot in order, choices in order: of equals the first is found first, and a
 * branch that cannot be cheaper than the best is left. Its bound is the sum of what each part costs at least.
 */
import type { Picks } from "./parts.ts";
import type { Uses } from "./problem.ts";
import type { Term } from "./tables.ts";

export interface Searched {
  /** Undefined when none is cheaper than `under`. */
  readonly picks: Picks | undefined;
  readonly cost: number;
  /** Every choice was looked at or ruled out. */
  readonly whole: boolean;
  readonly steps: number;
}

export interface Search {
  /** Slots to choose for, ascending; the others keep what `picks` says. */
  readonly slots: readonly number[];
  readonly sizes: readonly number[];
  /** Those whose scope is within `slots`. */
  readonly terms: readonly Term[];
  readonly uses: Uses;
  readonly picks: Picks;
  /** Only what costs less counts. */
  readonly under: number;
  readonly mostSteps: number;
}

export function searchExactly(search: Search): Searched {
  const run = new DepthFirst(search);
  run.from(0, run.leastOfAll());
  return { picks: run.best, cost: run.bestCost, whole: !run.stopped, steps: run.steps };
}

/** A term as one slot sees it when it is chosen. */
interface Touch {
  readonly term: number;
  /** The tables before and after the slot is chosen; undefined where the term is only asked when its last slot is chosen. */
  readonly before: Float64Array | undefined;
  readonly after: Float64Array | undefined;
}

class DepthFirst {
  best: Picks | undefined;
  bestCost: number;
  steps = 0;
  stopped = false;
  private readonly picks: Picks;
  private readonly touches: readonly (readonly Touch[])[];
  /** By depth, where each term's tables are read. */
  private readonly places: Int32Array[];
  private readonly room: number[];

  constructor(private readonly search: Search) {
    this.bestCost = search.under;
    this.picks = search.picks.slice();
    this.room = [...search.uses.room];
    this.touches = search.slots.map((slot) => touchesOf(slot, search.terms));
    this.places = [...search.slots, -1].map(() => new Int32Array(search.terms.length));
  }

  leastOfAll = (): number => this.search.terms.reduce((sum, { least }) => sum + (least?.[0]?.[0] ?? 0), 0);

  /** `least`: what every filling of this branch costs at least. */
  from(depth: number, least: number): void {
    const slot = this.search.slots[depth];
    if (slot === undefined) {
      this.best = this.picks.slice();
      this.bestCost = least;
      return;
    }
    const size = this.search.sizes[slot] ?? 0;
    for (let pick = 0; pick < size && !this.stopped; pick++) this.choose(depth, pick, least);
  }

  private choose(depth: number, pick: number, least: number): void {
    if (++this.steps > this.search.mostSteps) {
      this.stopped = true;
      return;
    }
    const slot = this.search.slots[depth] ?? 0;
    const plan = this.search.uses.planOf[slot]?.[pick] ?? -1;
    const left = plan < 0 ? 1 : (this.room[plan] ?? 0);
    if (left === 0) return;
    this.picks[slot] = pick;
    const now = least + this.added(depth, pick);
    if (now >= this.bestCost) return;
    if (plan >= 0) this.room[plan] = left - 1;
    this.from(depth + 1, now);
    if (plan >= 0) this.room[plan] = left;
  }

  /** What the choice adds to the bound; the next depth's places are worked out on the way. */
  private added(depth: number, pick: number): number {
    const places = this.places[depth] as Int32Array;
    const next = this.places[depth + 1] as Int32Array;
    next.set(places);
    const size = this.search.sizes[this.search.slots[depth] ?? 0] ?? 1;
    let sum = 0;
    for (const { term, before, after } of this.touches[depth] ?? []) {
      if (!before || !after) sum += this.search.terms[term]?.cost(this.picks) ?? 0;
      else {
        const place = places[term] ?? 0;
        next[term] = place * size + pick;
        sum += (after[next[term] ?? 0] ?? 0) - (before[place] ?? 0);
      }
    }
    return sum;
  }
}

function touchesOf(slot: number, terms: readonly Term[]): Touch[] {
  return terms.flatMap(({ scope, least }, term): Touch[] => {
    const k = scope.indexOf(slot);
    if (k < 0 || (!least && k !== scope.length - 1)) return [];
    return [{ term, before: least?.[k], after: least?.[k + 1] }];
  });
}
