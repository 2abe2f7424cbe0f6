/** How long a change of a class waits before its coach is told. Pure. */

/** At most one notice of a class in this time; later changes within it are told together when it is over. */
export const CLASS_HOLD_MS = 10 * 60_000;
/** What is held is looked at once a minute: whatever would then be told after the class begins is told now. */
const LAST_MS = 2 * 60_000;
/** So near, a coach is on the way already. Our own choice. */
const ON_THE_WAY_MS = 60 * 60_000;

/** What of a class decides that its coach must not come, or another one must. */
interface Held {
  readonly coach: string | null;
  readonly out: boolean;
}

/** ms since the epoch. */
interface HoldTimes {
  readonly now: number;
  /** When somebody was told of the class last; 0 for never. */
  readonly toldAt: number;
  /** When it begins, as its coach was told and as it stands. */
  readonly begins: readonly number[];
}

export function isHeld(told: Held | null, is: Held, { now, toldAt, begins }: HoldTimes): boolean {
  const left = Math.min(...begins.filter((at) => at > now)) - now;
  if (now - toldAt >= CLASS_HOLD_MS || left <= LAST_MS) return false;
  const isLost = told !== null && (told.coach !== is.coach || (is.out && !told.out));
  return !(isLost && left <= ON_THE_WAY_MS);
}
