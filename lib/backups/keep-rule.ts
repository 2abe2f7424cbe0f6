/** Which backups are kept: the last of each of so many days, weeks and months that have one. Pure. */
import { dateOfDay, monthOf, weekText } from "#lib/calendar/days.ts";
import { wallTimeAt } from "#lib/calendar/zone.ts";

const DAY_MS = 86_400_000;

/** How many days, weeks (ISO 8601) and months keep their last backup. */
export interface KeepRule {
  readonly days: number;
  readonly weeks: number;
  readonly months: number;
}

export interface DatedBackup {
  readonly name: string;
  /** ms since the epoch. */
  readonly at: number;
}

/**
 * The backups that `rule` does not keep, the newest first. Days, weeks and months are those of the wall clock in `zone`. Never
 * the newest, and never one dated after `now`: the clock was wrong then, and what it says about age is not believed.
 */
export function backupsToDelete<B extends DatedBackup>(
  all: readonly B[],
  rule: KeepRule,
  { zone, now }: { readonly zone: string; readonly now: number },
): B[] {
  const past = all.filter(({ at }) => at <= now).sort((a, b) => b.at - a.at || (a.name < b.name ? 1 : -1));
  const dated = past.map((backup) => ({ backup, date: dateIn(backup.at, zone) }));
  const kept = new Set(past.slice(0, 1));
  const keepLast = (count: number, periodOf: (date: string) => string) => {
    const periods = new Set<string>();
    for (const { backup, date } of dated) {
      const period = periodOf(date);
      if (periods.has(period)) continue;
      if (periods.size >= count) return;
      periods.add(period);
      kept.add(backup);
    }
  };
  keepLast(rule.days, (date) => date);
  keepLast(rule.weeks, weekText);
  keepLast(rule.months, monthOf);
  return past.filter((backup) => !kept.has(backup));
}

const dateIn = (at: number, zone: string): string => dateOfDay(Math.floor(wallTimeAt(at, zone) / DAY_MS));
