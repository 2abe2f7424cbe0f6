/** Wall times become instants: the table of a zone's changes says what the platform says, and weeks are those of ISO 8601. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { weekText } from "#lib/calendar/days.ts";
import { momentOf, wallTimeAt, zoneClock } from "#lib/calendar/zone.ts";
import { instantText, weeksOf } from "#lib/month/instants.ts";
import weeks from "#tests/fixtures/iso8601-weeks.json" with { type: "json" };

const DAY_MS = 86_400_000;
/** Half an hour (Lord Howe), at midnight (Havana), twice a year around Ramadan (Casablanca), a whole day left out (Apia, 2011). */
const ZONES = [
  "Europe/Lisbon",
  "America/New_York",
  "Australia/Lord_Howe",
  "America/Havana",
  "Africa/Casablanca",
  "Pacific/Apia",
  "UTC",
];

describe("a month's wall clock", () => {
  test.each(ZONES)("%s: every time is what `momentOf` says", (zone) => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2000, max: 2030 }),
        fc.integer({ min: 0, max: 365 }),
        fc.integer({ min: -2 * 1440, max: 92 * 1440 }),
        (year, day, minute) => {
          const from = Date.UTC(year, 0, 1) + day * DAY_MS;
          const clock = zoneClock(zone, from, from + 90 * DAY_MS);
          const wall = from + minute * 60_000;
          expect(clock.momentOf(wall)).toEqual(momentOf(wall, zone));
          expect(clock.wallTimeAt(wall)).toBe(wallTimeAt(wall, zone));
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe("weeks", () => {
  // Source: ISO 8601 week dates (tests/fixtures/iso8601-weeks.json).
  test.each(weeks.cases)("$date is $week", ({ date, week }) => {
    expect(weekText(date)).toBe(week.slice(0, 8));
  });

  test("from the one of `known` to the one of `to`; whole when all seven days are known", () => {
    const found = weeksOf({ dates: { from: "2027-01-05", known: "2026-12-28", to: "2027-01-16" } });
    expect(found.map(({ week, whole }) => [week, whole])).toEqual([
      ["2026-W53", true],
      ["2027-W01", true],
      ["2027-W02", false],
    ]);
  });
});

test("an instant is written to the second", () => {
  expect(instantText(Date.UTC(2026, 2, 29, 6, 0))).toBe("2026-03-29T06:00:00Z");
});
