/**
 * The server clocks that a screen knows: that of this run of the server, and that of the run in which the class it
 * follows was told.
 */
import { EXCHANGES_KEPT, type Exchange } from "#lib/floor/clock-offset.ts";
import { afterExchange, clockOffsetAt, firstClock, type SharedClock, studioTime } from "#lib/line/shared-clock.ts";

export class LineClocks {
  private epoch = "";
  private first: Exchange[] = [];
  private clock: SharedClock | null = null;
  /** Where the class was told in an earlier run of the server: that run's clock. */
  private earlier: SharedClock | null = null;
  private followsThisRun = false;

  /** A connection has opened. A restarted server has a new epoch and a new clock. */
  begin(epoch: string): void {
    this.first = [];
    if (epoch === this.epoch) return;
    if (this.followsThisRun) this.earlier = this.clock;
    this.followsThisRun = false;
    this.epoch = epoch;
    this.clock = null;
  }

  /** Adds one exchange of this run. Returns how many are known, at most eight. */
  take(exchange: Exchange): number {
    if (this.clock) {
      this.clock = afterExchange(this.clock, exchange);
      return EXCHANGES_KEPT;
    }
    this.first = [...this.first, exchange].slice(-EXCHANGES_KEPT);
    if (this.first.length >= EXCHANGES_KEPT) this.clock = firstClock(this.first);
    return this.clock ? EXCHANGES_KEPT : this.first.length;
  }

  /** Whether this run's clock is known well enough to show anything by. */
  get ready(): boolean {
    return this.clock !== null;
  }

  /** This run's offset at `local`, ms. */
  offset(local: number): number {
    return this.clock ? clockOffsetAt(this.clock, local) : 0;
  }

  /** A class is told in this run's time. False when it is already followed in that time. */
  follow(same: boolean): boolean {
    if (same && this.followsThisRun) return false;
    this.followsThisRun = true;
    this.earlier = null;
    return true;
  }

  /** `local` converted to the time of the class that is followed, ms. */
  followedTime(local: number): number {
    const of = this.followsThisRun ? this.clock : this.earlier;
    return of ? studioTime(of, local) : local;
  }
}
