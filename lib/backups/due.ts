/** When a backup is due: once a day at a time of the studio's wall clock, and at once when that time was missed. Pure. */
import { lastTimeOfDay, nextTimeOfDay } from "#lib/calendar/local-day.ts";

export interface DueQuestion {
  /** "03:30". */
  readonly time: string;
  readonly zone: string;
  /** When the last good backup was made, or the studio itself; ms since the epoch. */
  readonly lastAt: number;
  readonly now: number;
}

/** A last backup that is dated after now was made while the clock was wrong, and does not count. */
export function isBackupDue({ time, zone, lastAt, now }: DueQuestion): boolean {
  const last = lastAt > now ? Number.NEGATIVE_INFINITY : lastAt;
  return lastTimeOfDay(time, zone, now) > last;
}

/** ms since the epoch; now when one is due. Undefined for a time or zone that is none. */
export const nextBackupAt = (asked: DueQuestion): number | undefined =>
  isBackupDue(asked) ? asked.now : nextTimeOfDay(asked.time, asked.zone, asked.now);
