/** The clocks of the server that a screen knows: of this run, and of the run in which the class it follows was told. */
import { EXCHANGES_KEPT, type Exchange } from "#lib/floor/clock-offset.ts";
import { afterExchange, clockOffsetAt, firstClock, type SharedClock, studioTime } from "#lib/line/shared-clock.ts";

export interface LineClocks {
  /** A connection began; a server that was started again has another epoch and another clock. */
  begin(epoch: string): void;
  /** One exchange more of this run. Gives how many of them are known, at most eight. */
  take(exchange: Exchange): number;
  /** Is this run's clock known well enough to show something by? */
  readonly ready: boolean;
  /** This run's offset at `local`, ms. */
  offset(local: number): number;
  /** A class is told in this run's time. False when it is the one that is followed already, in the same time. */
  follow(same: boolean): boolean;
  /** `local` in the time of the class that is followed, ms. */
  followedTime(local: number): number;
}

export function lineClocks(): LineClocks {
  let epoch = "";
  let first: Exchange[] = [];
  let clock: SharedClock | null = null;
  /** Where the class was told in an earlier run: that run's clock, as it was. */
  let earlier: SharedClock | null = null;
  let followsThisRun = false;
  return {
    begin(is) {
      first = [];
      if (is === epoch) return;
      if (followsThisRun) earlier = clock;
      followsThisRun = false;
      epoch = is;
      clock = null;
    },
    take(exchange) {
      if (clock) {
        clock = afterExchange(clock, exchange);
        return EXCHANGES_KEPT;
      }
      first = [...first, exchange].slice(-EXCHANGES_KEPT);
      if (first.length >= EXCHANGES_KEPT) clock = firstClock(first);
      return clock ? EXCHANGES_KEPT : first.length;
    },
    get ready() {
      return clock !== null;
    },
    offset: (local) => (clock ? clockOffsetAt(clock, local) : 0),
    follow(same) {
      if (same && followsThisRun) return false;
      followsThisRun = true;
      earlier = null;
      return true;
    },
    followedTime(local) {
      const of = followsThisRun ? clock : earlier;
      return of ? studioTime(of, local) : local;
    },
  };
}
