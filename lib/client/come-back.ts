/**
 * When a page or a screen comes back after the server has said that it is stopping for a moment. All of them hear it in the same
 * instant, so each waits a time of its own: a server that has just started would else be asked for everything at once.
 */

/** ms; a server is back within a few seconds. Our own choices. */
const LEAST_MS = 300;
const SPREAD_MS = 1500;
/** How long "for a moment" is said, ms. After that the server is simply not there. */
const STOP_TOLD_MS = 60_000;

/** ms from the closing to the first attempt, never the same twice. */
export const comeBackMs = (chance: () => number = Math.random): number => LEAST_MS + chance() * SPREAD_MS;

export interface ComeBackSetup {
  /** Tries to connect. May come once more than needed. */
  connect(): void;
  /** Whether it is still said that the server is stopping for a moment. */
  say(stopping: boolean): void;
}

/** One page's or screen's way back. */
export class ComeBack {
  private readonly setup: ComeBackSetup;
  private timers: ReturnType<typeof setTimeout>[] = [];

  constructor(setup: ComeBackSetup) {
    this.setup = setup;
  }

  /** The server has just said that it is stopping. */
  begin(): void {
    const { connect, say } = this.setup;
    this.end();
    this.timers = [setTimeout(connect, comeBackMs()), setTimeout(() => say(false), STOP_TOLD_MS)];
    say(true);
  }

  /** It is back, or nobody waits for it any more. */
  end(): void {
    for (const timer of this.timers) clearTimeout(timer);
  }
}
