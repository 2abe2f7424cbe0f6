/**
 * A cache for results. The caller lists every value that the result reads; these never change in place. While each of them
 * is identical (`===`), the result is reused.
 */

/** The values that a result was worked out from. */
export type Reads = readonly unknown[];

interface Answer<T> {
  readonly reads: Reads;
  readonly value: T;
}

/** Keeps the last result. */
export class Kept<T> {
  private last: Answer<T> | undefined;

  /** `make` gets the last result, so that it can return the same value where the new one would be equal. */
  get(reads: Reads, make: (was: T | undefined) => T): T {
    if (this.last && areSame(this.last.reads, reads)) return this.last.value;
    this.last = { reads, value: make(this.last?.value) };
    return this.last.value;
  }
}

/** Keeps the last result for each key. A key that is not asked for in a whole round is dropped after the next one. */
export class KeptEach<T> {
  private readonly answers = new Map<string, Answer<T> & { askedIn: number }>();
  private now = 0;
  private asked = 0;

  /** Begins a round in which every key still needed is asked for. */
  round(): void {
    if (this.asked < this.answers.size)
      for (const [key, { askedIn }] of this.answers) if (askedIn < this.now) this.answers.delete(key);
    this.now++;
    this.asked = 0;
  }

  get(key: string, reads: Reads, make: (was: T | undefined) => T): T {
    const known = this.answers.get(key);
    if (known?.askedIn !== this.now) this.asked++;
    if (known && areSame(known.reads, reads)) {
      known.askedIn = this.now;
      return known.value;
    }
    const value = make(known?.value);
    this.answers.set(key, { reads, value, askedIn: this.now });
    return value;
  }
}

/** Whether two lists hold identical values. */
export function areSame(a: Reads, b: Reads): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (!Object.is(a[i], b[i])) return false;
  return true;
}
