/** Putting units into the order with the least seconds between them: the problem, apart from plans and classes. */

/**
 * Units are numbered from 0 in their present order. Row `count` of the seconds is what stands before all of them, column
 * `count` what stands after.
 */
export interface Sequencing {
  readonly count: number;
  /** Whole seconds from one unit to the next. May differ from those of the way back. */
  readonly seconds: (from: number, to: number) => number;
  /** For each unit those that come earlier, not necessarily right before it. */
  readonly after: readonly (readonly number[])[];
  /** Places a unit takes up, and the first place at which it may begin. */
  readonly sizes: readonly number[];
  readonly earliest: readonly number[];
  /** Units without a set-up of their own: the next one is compared with the one before them. */
  readonly silent: readonly boolean[];
}

export interface Sequence {
  readonly order: readonly number[];
  readonly seconds: number;
}

/** Seconds of an order, from what stands before to what stands after. */
export function sequenceSeconds(problem: Sequencing, order: readonly number[]): number {
  let last = problem.count;
  let sum = 0;
  for (const unit of order) {
    if (problem.silent[unit]) continue;
    sum += problem.seconds(last, unit);
    last = unit;
  }
  return sum + problem.seconds(last, problem.count);
}

/** Does an order keep every unit after those it follows, and not before its first place? */
export function keepsRules(problem: Sequencing, order: readonly number[]): boolean {
  const done = new Set<number>();
  let place = 0;
  for (const unit of order) {
    if (!mayComeNext(problem, unit, { done, place })) return false;
    done.add(unit);
    place += problem.sizes[unit] ?? 1;
  }
  return done.size === problem.count;
}

export function mayComeNext(
  problem: Sequencing,
  unit: number,
  so: { readonly done: ReadonlySet<number>; readonly place: number },
): boolean {
  const waits = problem.after[unit]?.some((earlier) => !so.done.has(earlier)) ?? false;
  return !waits && so.place >= (problem.earliest[unit] ?? 0);
}
