/** Improves an order by swapping neighbouring stretches until no swap saves a second. */
import type { Sequencing } from "./sequencing.ts";

/** Swaps that may still be tried, shared by all attempts of one search. */
export interface ExchangeBudget {
  left: number;
}

/** Up to this many units any two neighbouring stretches are tried; above, one of them has at most three units. */
const SMALL = 40;
const MANY = 300;
const SHORT = 3;

/** An order at least as good, which keeps the constraints if `start` does. The same start gives the same result. */
export function improved(problem: Sequencing, start: readonly number[], work: ExchangeBudget): number[] {
  const line = new Line(problem, start);
  let sinceGain = 0;
  for (let from = 0; sinceGain < start.length && work.left > 0; from = (from + 1) % start.length) {
    sinceGain = line.improveAt(from, work) ? 0 : sinceGain + 1;
  }
  return [...line.order];
}

class Line {
  readonly order: Int32Array;
  private readonly count: number;
  private readonly reach: number;
  /** The position of each unit, and the places taken up before each position. */
  private readonly position: Int32Array;
  private readonly places: Int32Array;
  /** The nearest position at or after, and at or before, whose unit has a set-up. */
  private readonly nextHeard: Int32Array;
  private readonly lastHeard: Int32Array;

  constructor(
    private readonly problem: Sequencing,
    start: readonly number[],
  ) {
    this.order = Int32Array.from(start);
    this.count = start.length;
    this.reach = this.count > MANY ? 12 : this.count;
    this.position = new Int32Array(this.count);
    this.places = new Int32Array(this.count + 1);
    this.nextHeard = new Int32Array(this.count + 1);
    this.lastHeard = new Int32Array(this.count + 1);
    this.index();
  }

  /** Tries the stretches that begin here and takes the first swap that saves something. */
  improveAt(from: number, work: ExchangeBudget): boolean {
    const longest = Math.min(this.count - 1, from + this.reach);
    for (let middle = from + 1; middle <= longest; middle++) {
      const most = this.count > SMALL && middle - from > SHORT ? SHORT : this.reach;
      const furthest = Math.min(this.count, middle + most);
      for (let to = middle + 1; to <= furthest; to++) {
        work.left--;
        if (!this.mayGoBack(to - 1, from, middle)) break;
        if (this.saves(from, middle, to) <= 0) continue;
        this.exchange(from, middle, to);
        return true;
      }
    }
    return false;
  }

  /** Whether the unit at `at` may come before the stretch from `from` to `middle`. */
  private mayGoBack(at: number, from: number, middle: number): boolean {
    const unit = this.order[at] ?? 0;
    const between = (this.places[middle] ?? 0) - (this.places[from] ?? 0);
    if ((this.places[at] ?? 0) - between < (this.problem.earliest[unit] ?? 0)) return false;
    for (const earlier of this.problem.after[unit] ?? []) {
      const position = this.position[earlier] ?? 0;
      if (position >= from && position < middle) return false;
    }
    return true;
  }

  private saves(from: number, middle: number, to: number): number {
    const [first, second] = [this.nextHeard[from] ?? 0, this.nextHeard[middle] ?? 0];
    if (first >= middle || second >= to) return 0;
    const seconds = this.problem.seconds;
    const before = this.unit(from === 0 ? -1 : (this.lastHeard[from - 1] ?? -1));
    const after = this.unit(this.nextHeard[to] ?? this.count);
    const [a, b] = [this.unit(first), this.unit(second)];
    const [endOfA, endOfB] = [this.unit(this.lastHeard[middle - 1] ?? 0), this.unit(this.lastHeard[to - 1] ?? 0)];
    const now = seconds(before, a) + seconds(endOfA, b) + seconds(endOfB, after);
    return now - seconds(before, b) - seconds(endOfB, a) - seconds(endOfA, after);
  }

  /** Beyond the first and last positions is what surrounds the block. */
  private unit(position: number): number {
    return position < 0 || position >= this.count ? this.problem.count : (this.order[position] ?? 0);
  }

  private exchange(from: number, middle: number, to: number): void {
    const first = this.order.slice(from, middle);
    this.order.copyWithin(from, middle, to);
    this.order.set(first, from + to - middle);
    this.index();
  }

  private index(): void {
    this.nextHeard[this.count] = this.count;
    let last = -1;
    for (let at = 0; at < this.count; at++) {
      const unit = this.order[at] ?? 0;
      this.position[unit] = at;
      this.places[at + 1] = (this.places[at] ?? 0) + (this.problem.sizes[unit] ?? 1);
      if (!this.problem.silent[unit]) last = at;
      this.lastHeard[at] = last;
    }
    for (let at = this.count - 1; at >= 0; at--) {
      const heard = !this.problem.silent[this.order[at] ?? 0];
      this.nextHeard[at] = heard ? at : (this.nextHeard[at + 1] ?? this.count);
    }
  }
}
