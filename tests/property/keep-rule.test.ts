/**
 * Which backups are deleted, for any days of making them, any rule and any zone. What is kept is worked out a second time here,
 * from the definition: the last of each of the newest days, weeks and months that have a backup, with Intl's calendar.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import { backupsToDelete, type DatedBackup, type KeepRule } from "#lib/backups/keep-rule.ts";

const NOW = Date.UTC(2026, 10, 30, 12);
const DAY_MS = 86_400_000;
const zones = fc.constantFrom("UTC", "Europe/Lisbon", "Pacific/Auckland", "America/St_Johns");
const rules = fc.record({
  days: fc.integer({ min: 1, max: 10 }),
  weeks: fc.integer({ min: 0, max: 8 }),
  months: fc.integer({ min: 0, max: 14 }),
});
/** Some of them dated after now, by a clock that was wrong. */
const times = fc.uniqueArray(fc.integer({ min: -700 * 24, max: 40 * 24 }), { minLength: 1, maxLength: 120 });
const backupsAt = (hours: readonly number[]): DatedBackup[] =>
  hours.map((hour) => ({ name: `backup ${hour}`, at: NOW + hour * 3_600_000 }));
const asked = fc.record({ hours: times, rule: rules, zone: zones });

function dateParts(at: number, zone: string): { date: string; week: string; month: string } {
  const date = new Intl.DateTimeFormat("sv-SE", { timeZone: zone }).format(at);
  const noon = new Date(`${date}T12:00:00Z`);
  // The Monday of its week names a week.
  const monday = new Date(noon.getTime() - ((noon.getUTCDay() + 6) % 7) * DAY_MS).toISOString().slice(0, 10);
  return { date, week: monday, month: date.slice(0, 7) };
}

function lastOfEach(all: readonly DatedBackup[], zone: string, of: "date" | "week" | "month", count: number) {
  const last = new Map<string, DatedBackup>();
  for (const backup of [...all].sort((a, b) => a.at - b.at)) last.set(dateParts(backup.at, zone)[of], backup);
  return [...last]
    .sort(([a], [b]) => (a < b ? 1 : -1))
    .slice(0, count)
    .map(([, backup]) => backup);
}

const names = (backups: readonly DatedBackup[]) => backups.map(({ name }) => name).sort();
const leftOf = (all: readonly DatedBackup[], rule: KeepRule, zone: string) => {
  const out = new Set(backupsToDelete(all, rule, { zone, now: NOW }));
  return all.filter((backup) => !out.has(backup));
};

test("what is left is the last of each day, week and month of the rule, and what is dated after now", () => {
  fc.assert(
    fc.property(asked, ({ hours, rule, zone }) => {
      const all = backupsAt(hours);
      const past = all.filter(({ at }) => at <= NOW);
      const kept = new Set([
        ...all.filter(({ at }) => at > NOW),
        ...lastOfEach(past, zone, "date", rule.days),
        ...lastOfEach(past, zone, "week", rule.weeks),
        ...lastOfEach(past, zone, "month", rule.months),
      ]);
      expect(names(leftOf(all, rule, zone))).toEqual(names([...kept]));
    }),
  );
});

test("the newest is never deleted, whatever the rule says", () => {
  const any = fc.record({ days: fc.integer(), weeks: fc.integer(), months: fc.integer() });
  fc.assert(
    fc.property(times, any, zones, (hours, rule, zone) => {
      const all = backupsAt(hours);
      const newest = all.filter(({ at }) => at <= NOW).sort((a, b) => b.at - a.at)[0];
      if (newest) expect(leftOf(all, rule, zone)).toContain(newest);
    }),
  );
});

test("deleting again deletes nothing, and no wider rule deletes what a narrower one keeps", () => {
  fc.assert(
    fc.property(asked, ({ hours, rule, zone }) => {
      const all = backupsAt(hours);
      const left = leftOf(all, rule, zone);
      expect(leftOf(left, rule, zone)).toEqual(left);
      const wider = { days: rule.days + 1, weeks: rule.weeks + 1, months: rule.months + 1 };
      expect(leftOf(all, wider, zone)).toEqual(expect.arrayContaining(left));
    }),
  );
});

test("two years of a backup every day leave 7 days, 4 weeks and 12 months", () => {
  let left: DatedBackup[] = [];
  for (let day = 730; day >= 0; day--) {
    const now = NOW - day * DAY_MS;
    const all = [...left, { name: `day ${day}`, at: now }];
    const out = new Set(backupsToDelete(all, { days: 7, weeks: 4, months: 12 }, { zone: "UTC", now }));
    left = all.filter((backup) => !out.has(backup));
  }
  // Monday 30 November: seven days back to the 24th, then Sundays, then the ends of months.
  expect(left.map(({ at }) => new Date(at).toISOString().slice(0, 10))).toEqual([
    ...["2025-12-31", "2026-01-31", "2026-02-28", "2026-03-31", "2026-04-30", "2026-05-31"],
    ...["2026-06-30", "2026-07-31", "2026-08-31", "2026-09-30", "2026-10-31"],
    ...["2026-11-15", "2026-11-22"],
    ...["2026-11-24", "2026-11-25", "2026-11-26", "2026-11-27", "2026-11-28", "2026-11-29", "2026-11-30"],
  ]);
});
