/** How often each key may do something: a burst, then one in so many ms. One number is kept for each key (leaky bucket). */
export interface PaceRules {
  /** At once. */
  readonly burst: number;
  /** After those, one in so many ms. */
  readonly everyMs: number;
  /** How many keys are remembered; the one that was counted longest ago is dropped first. */
  readonly keys: number;
}

export class PaceLimit {
  /** When the bucket of each key will be empty, ms since the epoch; in order of the last count. */
  private readonly emptyAt = new Map<string, number>();
  private readonly rules: PaceRules;

  constructor(rules: PaceRules) {
    this.rules = rules;
  }

  /** Counts one and returns 0, or counts nothing and returns the ms to wait. */
  take(key: string, now: number): number {
    const { burst, everyMs, keys } = this.rules;
    const empty = Math.max(this.emptyAt.get(key) ?? now, now);
    const wait = empty - now - (burst - 1) * everyMs;
    if (wait > 0) return wait;
    this.emptyAt.delete(key);
    this.emptyAt.set(key, empty + everyMs);
    for (const old of this.emptyAt.keys()) {
      if (this.emptyAt.size <= keys) break;
      this.emptyAt.delete(old);
    }
    return 0;
  }
}
