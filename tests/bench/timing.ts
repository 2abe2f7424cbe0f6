/** Measures milliseconds and sums them up. */

/** Percentile by nearest rank. */
export function quantile(sorted: Float64Array, q: number): number {
  return sorted[Math.max(0, Math.ceil(q * sorted.length) - 1)] ?? Number.NaN;
}

export interface Taken<T> {
  readonly ms: number;
  readonly value: T;
}

export function taken<T>(act: () => T): Taken<T> {
  const from = performance.now();
  const value = act();
  return { ms: performance.now() - from, value };
}

export interface Spread {
  readonly p50: number;
  readonly p99: number;
}

export function spread(ms: readonly number[]): Spread {
  const sorted = Float64Array.from(ms).sort();
  return { p50: quantile(sorted, 0.5), p99: quantile(sorted, 0.99) };
}

/** The spread of an act that is repeated, after as many warm-up rounds. */
export function measure(rounds: number, act: () => unknown): Spread {
  for (let i = 0; i < rounds; i++) act();
  return spread(Array.from({ length: rounds }, () => taken(act).ms));
}
