/**
 * The server's clock as one device reads it: its own monotonic clock plus an offset that is measured repeatedly
 * (RFC 5905, section 8, in `lib/floor/clock-offset.ts`). The offset slides to a better value instead of jumping, so that no
 * displayed second is skipped or shown twice.
 */
import { bestOffset, EXCHANGES_KEPT, type Exchange, exchangeOffset } from "#lib/floor/clock-offset.ts";

export interface SharedClock {
  /** The recent exchanges, oldest first, all measured on the device's clock since it last stopped. */
  readonly exchanges: readonly Exchange[];
  /** ms to add to the device's clock at `since`; slides towards `target` from then on. */
  readonly offset: number;
  readonly target: number;
  /** ms on the device's clock. */
  readonly since: number;
}

/** How fast an offset slides, ms per ms: 125 ms in 25 s. Our own choice; too slow to be noticed. */
export const SLIDE = 0.005;
/**
 * A difference above this is no measuring error: the device slept or its clock stopped. The offset then jumps at once,
 * since a follower may jump but must not be wrong for minutes. ms. NTP's step threshold, as remembered from RFC 5905
 * (STEPT).
 */
export const STEP_MS = 125;
/** How fast two clocks may drift apart, ms per ms. Our own choice: ordinary quartz stays within half of it. */
const DRIFT = 0.0002;
/** Some browsers read the clock in whole ms. */
const READING_MS = 1;

/** The offset in force at `local`, ms on the device's clock. */
export function clockOffsetAt({ offset, target, since }: SharedClock, local: number): number {
  const most = SLIDE * Math.max(0, local - since);
  return offset + Math.max(-most, Math.min(most, target - offset));
}

/** The server's time at `local`, both ms. */
export const studioTime = (clock: SharedClock, local: number): number => local + clockOffsetAt(clock, local);

/** The first clock, from the first exchanges; null when none is possible. It does not slide, as nothing is shown yet. */
export function firstClock(exchanges: readonly Exchange[]): SharedClock | null {
  return exchanges.reduce<SharedClock | null>((clock, exchange) => {
    const next = afterExchange(clock, exchange);
    return next && { ...next, offset: next.target };
  }, null);
}

/** The clock after one more exchange. An impossible exchange (answered before it was asked) is ignored. */
export function afterExchange(clock: SharedClock | null, exchange: Exchange): SharedClock | null {
  if (exchangeOffset(exchange).delay < 0) return clock;
  const local = exchange.t4;
  const known = clock && agrees(clock.exchanges, exchange) ? clock.exchanges : [];
  const exchanges = [...known, exchange].slice(-EXCHANGES_KEPT);
  const best = bestOffset(exchanges);
  if (!best) return clock;
  const now = clock ? clockOffsetAt(clock, local) : best.offset;
  const steps = !clock || Math.abs(best.offset - now) > STEP_MS;
  return { exchanges, offset: steps ? best.offset : now, target: best.offset, since: local };
}

/**
 * The true offset lies within half of an exchange's delay of its offset. If two exchanges cannot both be right, one of the
 * clocks stopped in between, and the earlier measurements are useless.
 */
function agrees(before: readonly Exchange[], exchange: Exchange): boolean {
  const is = exchangeOffset(exchange);
  return before.every((earlier) => {
    const was = exchangeOffset(earlier);
    const room = (was.delay + is.delay) / 2 + DRIFT * Math.max(0, exchange.t4 - earlier.t4) + READING_MS;
    return Math.abs(was.offset - is.offset) <= room;
  });
}
