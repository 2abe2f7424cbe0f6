/** Notices when the machine's clock is set: it is compared with one that only goes forward. */
import type { ClockJump } from "#server/context/care.ts";

export interface ClockWatch {
  /** The latest first. */
  jumps(): readonly ClockJump[];
  /** Compares now; the timer does it by itself. */
  look(): void;
  stop(): void;
}

export interface ClockWatchSetup {
  readonly now: () => number;
  /** ms, never set back. A machine that sleeps may leave it standing, which is noticed as a jump too. */
  readonly steady?: () => number;
  readonly everyMs?: number;
}

/** Less is the work of a clock that is kept right over the network. Our own choice. */
const JUMP_MS = 5_000;
const EVERY_MS = 10_000;
const MOST = 10;

export function watchClock({ now, steady = () => performance.now(), everyMs = EVERY_MS }: ClockWatchSetup): ClockWatch {
  const jumps: ClockJump[] = [];
  let last = { wall: now(), steady: steady() };
  const look = () => {
    const here = { wall: now(), steady: steady() };
    const byMs = Math.round(here.wall - last.wall - (here.steady - last.steady));
    last = here;
    if (Math.abs(byMs) < JUMP_MS) return;
    jumps.unshift({ at: here.wall, byMs });
    jumps.length = Math.min(jumps.length, MOST);
  };
  const timer = setInterval(look, everyMs);
  timer.unref();
  return { jumps: () => jumps, look, stop: () => clearInterval(timer) };
}
