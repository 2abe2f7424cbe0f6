/**
 * The exact best order of up to 16 units by dynamic programming over sets of units (Held and Karp, "A dynamic programming
 * approach to sequencing problems", J. SIAM 10(1), 1962), worked from the end so that the order can be read from the start.
 */
import type { Sequence, Sequencing } from "./sequencing.ts";

/** 2^16 sets x 17 last units is about a million numbers: some tens of milliseconds. */
export const MOST_EXACT = 16;

const NEVER = 2 ** 30;

/**
 * The order with the least seconds; of equals the one that begins with the earliest unit, then the next earliest, and so
 * on. Null when no order keeps the constraints.
 */
export function exactSequence(problem: Sequencing): Sequence | null {
  const table = new Table(problem);
  const { count } = problem;
  const seconds = table.rest(0, count);
  if (seconds >= NEVER) return null;
  const order: number[] = [];
  let set = 0;
  let last = count;
  while (order.length < count) {
    const goal = table.rest(set, last);
    const unit = table.next(set).find((u) => table.via(set, last, u) === goal);
    if (unit === undefined) return null;
    order.push(unit);
    set |= 1 << unit;
    if (!problem.silent[unit]) last = unit;
  }
  return { order, seconds };
}

/** The least seconds still to come, for every set of units done and the last of them with a set-up. */
class Table {
  private readonly width: number;
  private readonly seconds: Int32Array;
  private readonly needs: Int32Array;
  private readonly places: Int32Array;
  private readonly silentSet: number;
  private readonly cells: Int32Array;

  constructor(private readonly problem: Sequencing) {
    const { count, after, silent } = problem;
    this.width = count + 1;
    this.seconds = matrix(problem);
    this.needs = Int32Array.from(after, (units) => units.reduce((set, u) => set | (1 << u), 0));
    this.places = placesOf(problem);
    this.silentSet = silent.reduce((set, is, u) => (is ? set | (1 << u) : set), 0);
    this.cells = new Int32Array(this.width * 2 ** count).fill(NEVER);
    this.fill();
  }

  rest(set: number, last: number): number {
    return this.cells[set * this.width + last] ?? NEVER;
  }

  /** Units that may follow those of the set. */
  next(set: number): number[] {
    const units: number[] = [];
    const place = this.places[set] ?? 0;
    for (let unit = 0; unit < this.problem.count; unit++) {
      const free = (set & (1 << unit)) === 0 && ((this.needs[unit] ?? 0) & ~set) === 0;
      if (free && place >= (this.problem.earliest[unit] ?? 0)) units.push(unit);
    }
    return units;
  }

  /** The least seconds still to come if this unit is next. */
  via(set: number, last: number, unit: number): number {
    const then = (set | (1 << unit)) * this.width;
    if (this.silentSet & (1 << unit)) return this.cells[then + last] ?? NEVER;
    return (this.seconds[last * this.width + unit] ?? 0) + (this.cells[then + unit] ?? NEVER);
  }

  private fill(): void {
    const { count } = this.problem;
    const full = 2 ** count - 1;
    for (const last of this.lasts(full))
      this.cells[full * this.width + last] = this.seconds[last * this.width + count] ?? 0;
    for (let set = full - 1; set >= 0; set--) {
      const next = this.next(set);
      if (next.length > 0)
        for (const last of this.lasts(set)) this.cells[set * this.width + last] = this.least(set, last, next);
    }
  }

  private least(set: number, last: number, next: readonly number[]): number {
    let least = NEVER;
    for (const unit of next) {
      const seconds = this.via(set, last, unit);
      if (seconds < least) least = seconds;
    }
    return least;
  }

  /** What may have come last: any of the set with a set-up, else what comes before the block. */
  private lasts(set: number): number[] {
    const lasts: number[] = [];
    for (let unit = 0; unit < this.problem.count; unit++) if (set & ~this.silentSet & (1 << unit)) lasts.push(unit);
    return lasts.length > 0 ? lasts : [this.problem.count];
  }
}

function matrix(problem: Sequencing): Int32Array {
  const width = problem.count + 1;
  const seconds = new Int32Array(width * width);
  for (let from = 0; from < width; from++)
    for (let to = 0; to < width; to++) seconds[from * width + to] = problem.seconds(from, to);
  return seconds;
}

/** The number of places that each set of units takes up. */
function placesOf({ count, sizes }: Sequencing): Int32Array {
  const places = new Int32Array(2 ** count);
  for (let set = 1; set < places.length; set++) {
    const lowest = 31 - Math.clz32(set & -set);
    places[set] = (places[set & (set - 1)] ?? 0) + (sizes[lowest] ?? 1);
  }
  return places;
}
