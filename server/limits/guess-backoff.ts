/**
 * How long somebody who guessed wrong has to wait before the next guess: not at all at first, then longer each time. Only
 * wrong guesses count, and a guess that was refused does not. Kept in memory, where nobody outside can reset it.
 */
export interface BackoffRules {
  /** Wrong guesses before the first wait. */
  readonly free: number;
  /** The wait (ms) after the first guess beyond those; it doubles with each further one. */
  readonly firstWaitMs: number;
  readonly longestWaitMs: number;
  /** After this long (ms) without a wrong guess, counting starts again. */
  readonly forgetMs: number;
  /** How many keys are remembered; the one with the oldest wrong guess is dropped first. */
  readonly keys: number;
}

interface Failures {
  readonly count: number;
  /** ms since the epoch. */
  readonly last: number;
}

export class GuessBackoff {
  private readonly failures = new Map<string, Failures>();
  private readonly allowance: BackoffRules;

  constructor(allowance: BackoffRules) {
    this.allowance = allowance;
  }

  /** ms until the next guess is accepted; 0 for now. */
  waitMs(key: string, now: number): number {
    const { free, firstWaitMs, longestWaitMs } = this.allowance;
    const { count, last } = this.known(key, now);
    if (count < free) return 0;
    const wait = Math.min(longestWaitMs, firstWaitMs * 2 ** (count - free));
    return Math.max(0, Math.min(wait, last + wait - now));
  }

  failed(key: string, now: number): void {
    const count = this.known(key, now).count + 1;
    // Re-inserted, so that the map is in order of the last wrong guess.
    this.failures.delete(key);
    this.failures.set(key, { count, last: now });
    for (const old of this.failures.keys()) {
      if (this.failures.size <= this.allowance.keys) break;
      this.failures.delete(old);
    }
  }

  /** After a right guess: the wrong ones before it were typing mistakes. */
  forgive(key: string): void {
    this.failures.delete(key);
  }

  private known(key: string, now: number): Failures {
    const found = this.failures.get(key);
    return found && now - found.last < this.allowance.forgetMs ? found : { count: 0, last: now };
  }
}

/** A wait in words, rounded up: "30 seconds", "2 minutes". */
export function waitInWords(ms: number): string {
  const seconds = Math.max(1, Math.ceil(ms / 1000));
  if (seconds <= 90) return seconds === 1 ? "1 second" : `${seconds} seconds`;
  return `${Math.ceil(seconds / 60)} minutes`;
}
