/** The problem of putting units into the order with the least seconds between them, without plans and classes. */

/**
 * Units are numbered from 0 in their present order. Row `count` of the seconds is what comes before all of them, column
 * `count` what comes after.
 */
export interface Sequencing {
  readonly count: number;
  /** Whole seconds from one unit to the next. The way back may differ. */
  readonly seconds: (from: number, to: number) => number;
  /** For each unit, those that must come earlier, not necessarily right before it. */
  readonly after: readonly (readonly number[])[];
  /** The places that a unit takes up, and the first place where it may begin. */
  readonly sizes: readonly number[];
  readonly earliest: readonly number[];
  /** Units without a set-up of their own: the next one is compared with the one before them. */
  readonly silent: readonly boolean[];
}

export interface Sequence {
  readonly order: readonly number[];
  readonly seconds: number;
}

/** Seconds of an order, from what comes before it to what comes after. */
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

/** Whether every unit comes after those it must follow and not before its first place. */
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
