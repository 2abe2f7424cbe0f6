/**
 * The studio's clock as one device reads it: its own forward-only clock plus an offset that is measured again and again
 * (RFC 5905, section 8, in `lib/floor/clock-offset.ts`). A better offset is not taken at once but slid into, so that no
 * second that is shown is ever skipped or shown twice.
 */
import { bestOffset, EXCHANGES_KEPT, type Exchange, exchangeOffset } from "#lib/floor/clock-offset.ts";

export interface SharedClock {
  /** The last exchanges, oldest first, on the device's own clock as it still runs. */
  readonly exchanges: readonly Exchange[];
  /** ms to add to the device's clock at `since`; from there it slides towards `target`. */
  readonly offset: number;
  readonly target: number;
  /** ms of the device's clock. */
  readonly since: number;
}

/** How fast an offset slides, ms per ms: half a hundredth, 125 ms in 25 s. Our own choice: nobody hears or sees it. */
export const SLIDE = 0.005;
/**
 * A difference above this is no error of measuring: the device slept, or its clock was stopped. It is stepped over at once;
 * a screen that shows somebody else's class may jump, but not be wrong for minutes. ms. NTP's own step threshold, as
 * remembered from RFC 5905 (STEPT).
 */
export const STEP_MS = 125;
/** What two clocks may drift apart, ms per ms. Our own choice: quartz without care stays within half of it. */
const DRIFT = 0.0002;
/** Readings are in whole ms on some browsers. */
const READING_MS = 1;

/** The offset in force at `local`, ms of the device's clock. */
export function clockOffsetAt({ offset, target, since }: SharedClock, local: number): number {
  const most = SLIDE * Math.max(0, local - since);
  return offset + Math.max(-most, Math.min(most, target - offset));
}

/** The studio's time at `local`, both ms. */
export const studioTime = (clock: SharedClock, local: number): number => local + clockOffsetAt(clock, local);

/** A clock to begin with, of the first exchanges; null when none of them is possible. Nothing is shown yet: nothing slides. */
export function firstClock(exchanges: readonly Exchange[]): SharedClock | null {
  return exchanges.reduce<SharedClock | null>((clock, exchange) => {
    const next = afterExchange(clock, exchange);
    return next && { ...next, offset: next.target };
  }, null);
}

/** The clock after one more exchange. An impossible one (an answer before its question) changes nothing. */
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
 * The true offset lies within half of an exchange's delay of what it says. Where two exchanges leave no room for one
 * truth, one of the clocks stood still in between, and all that was measured before is worth nothing.
 */
function agrees(before: readonly Exchange[], exchange: Exchange): boolean {
  const is = exchangeOffset(exchange);
  return before.every((earlier) => {
    const was = exchangeOffset(earlier);
    const room = (was.delay + is.delay) / 2 + DRIFT * Math.max(0, exchange.t4 - earlier.t4) + READING_MS;
    return Math.abs(was.offset - is.offset) <= room;
  });
}
