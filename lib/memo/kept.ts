/**
 * Answers kept with what they were worked out from. Whoever asks declares all that the answer reads, as a list of values
 * that never change in place: while each of them is the very same, so is the answer, and it is not worked out again.
 */

/** What an answer was worked out from. */
export type Reads = readonly unknown[];

interface Answer<T> {
  readonly reads: Reads;
  readonly value: T;
}

/** The last answer to one question. */
export class Kept<T> {
  private last: Answer<T> | undefined;

  /** `make` is given the last answer, so that it may hand back the same value where the new one would be equal. */
  get(reads: Reads, make: (was: T | undefined) => T): T {
    if (this.last && areSame(this.last.reads, reads)) return this.last.value;
    this.last = { reads, value: make(this.last?.value) };
    return this.last.value;
  }
}

/** The last answer a key: an item's, a span's. What a whole round did not ask for is let go at the end of the next. */
export class KeptEach<T> {
  private readonly answers = new Map<string, Answer<T> & { askedIn: number }>();
  private now = 0;
  private asked = 0;

  /** Everything is about to be asked for once more. */
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

/** Each of one list the very same value as its fellow of the other. */
export function areSame(a: Reads, b: Reads): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (!Object.is(a[i], b[i])) return false;
  return true;
}
