/**
 * How often somebody may guess a pairing code: few times from one address, not many from all together. Kept in memory;
 * what is stored is bounded, since addresses are forgotten with their window.
 */
export const WINDOW_MS = 10 * 60_000;
export const PER_ADDRESS = 10;
export const OVERALL = 100;

export interface AttemptLimit {
  /** May this address try now? */
  allows(address: string, now: number): boolean;
  /** Counts a wrong guess. */
  failed(address: string, now: number): void;
}

/** A limiter over sliding windows of ten minutes. Only wrong guesses count. */
export function createAttemptLimit(): AttemptLimit {
  let failures: { address: string; at: number }[] = [];
  const recent = (now: number) => {
    failures = failures.filter((failure) => failure.at > now - WINDOW_MS);
    return failures;
  };
  return {
    allows(address, now) {
      const all = recent(now);
      return all.length < OVERALL && all.filter((failure) => failure.address === address).length < PER_ADDRESS;
    },
    failed(address, now) {
      recent(now).push({ address, at: now });
    },
  };
}
