/**
 * How far another device's clock is from ours, measured by one request and its answer: RFC 5905 (NTP version 4),
 * section 8. The error is at most half of the delay, so of several exchanges the one with the least delay is used.
 */

/** The four times of one exchange: request sent (ours), received (theirs), answer sent (theirs), received (ours). */
export interface Exchange {
  readonly t1: number;
  readonly t2: number;
  readonly t3: number;
  readonly t4: number;
}
export interface Offset {
  /** Our clock plus this is theirs. In the unit of the readings. */
  readonly offset: number;
  /** Round-trip time without the other device's own time. */
  readonly delay: number;
}

export const exchangeOffset = ({ t1, t2, t3, t4 }: Exchange): Offset => ({
  offset: (t2 - t1 + (t3 - t4)) / 2,
  delay: t4 - t1 - (t3 - t2),
});

/** How many recent exchanges count: RFC 5905, section 10, keeps eight. */
export const EXCHANGES_KEPT = 8;

/** The best of the recent exchanges: least delay, then newest. Null when there is none with a delay of 0 or more. */
export function bestOffset(exchanges: readonly Exchange[]): Offset | null {
  const possible = exchanges
    .slice(-EXCHANGES_KEPT)
    .map(exchangeOffset)
    .filter(({ delay }) => delay >= 0);
  return possible.reduce<Offset | null>(
    (best, next) => (best === null || next.delay <= best.delay ? next : best),
    null,
  );
}
