import { describe, expect, it } from "vitest";
import {
  addMonths,
  dateOfDay,
  dayNumber,
  daysOfMonth,
  isDate,
  isoWeek,
  isoWeekday,
  isTime,
  minuteOfDay,
  weeksOfMonth,
} from "#lib/calendar/days.ts";
import weeks from "#tests/fixtures/iso8601-weeks.json" with { type: "json" };

describe("calendar", () => {
  // Source: ISO 8601 week dates (values and rule in tests/fixtures/iso8601-weeks.json).
  it.each(weeks.cases)("$date is $week in ISO 8601", ({ date, week }) => {
    const w = isoWeek(date);
    expect(`${w.year}-W${String(w.week).padStart(2, "0")}-${isoWeekday(date)}`).toBe(week);
  });

  it("has 53 weeks in exactly the long years of ISO 8601", () => {
    const long: number[] = [];
    // 28 December is always in the last week of its year.
    for (let year = 1998; year <= 2032; year++) if (isoWeek(`${year}-12-28`).week === 53) long.push(year);
    expect(long).toEqual(weeks.longYears);
  });

  it("has 71 long years in 400", () => {
    let long = 0;
    for (let year = 2000; year < 2400; year++) if (isoWeek(`${year}-12-28`).week === 53) long++;
    expect(long).toBe(71);
  });

  it("knows the lengths of months, leap years by the Gregorian rule", () => {
    const feb = (year: number) => daysOfMonth(`${year}-02`).length;
    expect([feb(2023), feb(2024), feb(1900), feb(2000)]).toEqual([28, 29, 28, 29]);
    const lengths = Array.from({ length: 12 }, (_, i) => daysOfMonth(addMonths("2026-01", i)).length);
    expect(lengths).toEqual([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]);
  });

  it("lays a month out in weeks from Monday", () => {
    const rows = weeksOfMonth("2026-11"); // 1 November 2026 is a Sunday
    expect(rows).toHaveLength(6);
    expect(rows[0]).toEqual([null, null, null, null, null, null, "2026-11-01"]);
    expect(rows[1]?.[0]).toBe("2026-11-02");
    expect(rows[5]).toEqual(["2026-11-30", null, null, null, null, null, null]);
    expect(weeksOfMonth("2027-02")).toHaveLength(4); // begins on a Monday, 28 days
  });

  it("crosses the turn of the year in both directions", () => {
    expect(addMonths("2026-11", 3)).toBe("2027-02");
    expect(addMonths("2026-02", -3)).toBe("2025-11");
  });

  it("refuses invalid days and times", () => {
    for (const date of ["2026-02-29", "2026-13-01", "2026-1-1", "", "2026-11-31"]) expect(isDate(date)).toBe(false);
    for (const time of ["24:00", "7:30", "07:60", ""]) expect(isTime(time)).toBe(false);
    expect(minuteOfDay("07:30")).toBe(450);
    expect(daysOfMonth("2026-00")).toEqual([]);
  });

  it("counts days back and forth", () => {
    for (let day = -30000; day < 60000; day += 97) expect(dayNumber(dateOfDay(day))).toBe(day);
  });
});
