/**
 * How long somebody who guessed wrong has to wait before the next guess: nothing at first, then ever longer. Only wrong
 * guesses count, and a guess that was turned away is none. Kept in memory: nobody outside can make the server forget it.
 */
export interface BackoffRules {
  /** Wrong guesses before there is a wait. */
  readonly free: number;
  /** ms after the first guess beyond those; doubled with each one more. */
  readonly firstWaitMs: number;
  readonly longestWaitMs: number;
  /** Without a wrong guess for this long (ms) it begins anew. */
  readonly forgetMs: number;
  /** How many keys are remembered; the one that was wrong longest ago goes first. */
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

  /** ms until the next guess is looked at; 0 when it may come now. */
  waitMs(key: string, now: number): number {
    const { free, firstWaitMs, longestWaitMs } = this.allowance;
    const { count, last } = this.known(key, now);
    if (count < free) return 0;
    const wait = Math.min(longestWaitMs, firstWaitMs * 2 ** (count - free));
    return Math.max(0, Math.min(wait, last + wait - now));
  }

  failed(key: string, now: number): void {
    const count = this.known(key, now).count + 1;
    // The newest stands last, so that the oldest is found first.
    this.failures.delete(key);
    this.failures.set(key, { count, last: now });
    for (const old of this.failures.keys()) {
      if (this.failures.size <= this.allowance.keys) break;
      this.failures.delete(old);
    }
  }

  /** Whoever has got in had only mistyped. */
  forgive(key: string): void {
    this.failures.delete(key);
  }

  private known(key: string, now: number): Failures {
    const found = this.failures.get(key);
    return found && now - found.last < this.allowance.forgetMs ? found : { count: 0, last: now };
  }
}

/** A wait as people say it, never too short: "30 seconds", "2 minutes". */
export function waitInWords(ms: number): string {
  const seconds = Math.max(1, Math.ceil(ms / 1000));
  if (seconds <= 90) return seconds === 1 ? "1 second" : `${seconds} seconds`;
  return `${Math.ceil(seconds / 60)} minutes`;
}
