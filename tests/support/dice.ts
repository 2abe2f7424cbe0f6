/** Seeded random numbers, for tests that make their own data. */
import { seededRandom } from "#lib/order/random.ts";

export class Dice {
  private readonly next: () => number;
  constructor(seed: number) {
    this.next = seededRandom(seed);
  }
  /** A whole number from 0 to n - 1. */
  upTo(n: number): number {
    return Math.floor(this.next() * n);
  }
  one<T>(list: readonly T[]): T {
    const chosen = list[this.upTo(list.length)];
    if (chosen === undefined) throw new Error("nothing to choose from");
    return chosen;
  }
}
