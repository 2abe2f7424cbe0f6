/**
 * By how much another device's clock differs from ours, from one question and its answer: RFC 5905 (NTP version 4),
 * section 8. The answer is wrong by at most half of the delay, so of several the one with the least delay is believed.
 */

/** Four readings of one exchange: ours when asking, theirs when asked, theirs when answering, ours when answered. */
export interface Exchange {
  readonly t1: number;
  readonly t2: number;
  readonly t3: number;
  readonly t4: number;
}
export interface Offset {
  /** Add it to our clock to read theirs. In the unit of the readings. */
  readonly offset: number;
  /** Time on the way, there and back. */
  readonly delay: number;
}

export const exchangeOffset = ({ t1, t2, t3, t4 }: Exchange): Offset => ({
  offset: (t2 - t1 + (t3 - t4)) / 2,
  delay: t4 - t1 - (t3 - t2),
});

/** How many of the last exchanges are looked at: RFC 5905, section 10, keeps eight. */
export const EXCHANGES_KEPT = 8;

/** The most trustworthy of the last exchanges: least delay, the newest of equals. Null without any, or with none possible. */
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
