/** When a digest is due: by the wall clock of its reader, through both changes of a year, and in zones off the full hour. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isClockTime, lastTimeOfDay } from "#lib/calendar/local-day.ts";
import { isTimeZone } from "#lib/calendar/zone.ts";
import { dayOfMoment, timeOfMoment } from "#lib/formats/dates.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";

const inZone = (zone: string) => ({ ...STANDARD_FORMATS, zone });
const at = (iso: string) => Date.parse(iso);
const iso = (ms: number) => new Date(ms).toISOString();
const HOUR_MS = 3_600_000;
const last = (time: string, zone: string, now: string) => iso(lastTimeOfDay(time, zone, at(now)));

describe("Europe/London in 2026", () => {
  // Clocks go from 01:00 GMT to 02:00 BST on 29 March, and from 02:00 BST back to 01:00 GMT on 25 October.
  test("stays at the same wall time over both changes", () => {
    expect(last("07:30", "Europe/London", "2026-03-28T12:00:00Z")).toBe("2026-03-28T07:30:00.000Z");
    expect(last("07:30", "Europe/London", "2026-03-29T12:00:00Z")).toBe("2026-03-29T06:30:00.000Z");
    expect(last("07:30", "Europe/London", "2026-10-24T12:00:00Z")).toBe("2026-10-24T06:30:00.000Z");
    expect(last("07:30", "Europe/London", "2026-10-25T12:00:00Z")).toBe("2026-10-25T07:30:00.000Z");
  });

  test("a time that is left out comes once, as much later as was left out", () => {
    expect(last("01:30", "Europe/London", "2026-03-29T00:59:00Z")).toBe("2026-03-28T01:30:00.000Z");
    expect(last("01:30", "Europe/London", "2026-03-29T01:29:00Z")).toBe("2026-03-28T01:30:00.000Z");
    expect(last("01:30", "Europe/London", "2026-03-29T01:30:00Z")).toBe("2026-03-29T01:30:00.000Z");
    expect(timeOfMoment(at("2026-03-29T01:30:00Z"), inZone("Europe/London"))).toBe("02:30");
  });

  test("a time that comes twice counts the first time only", () => {
    const first = "2026-10-25T00:30:00.000Z";
    expect(last("01:30", "Europe/London", "2026-10-25T00:29:00Z")).toBe("2026-10-24T00:30:00.000Z");
    for (const now of ["00:30", "01:00", "01:30", "01:31", "12:00"]) {
      expect(last("01:30", "Europe/London", `2026-10-25T${now}:00Z`)).toBe(first);
    }
  });
});

test.each([
  ["Asia/Kathmandu", "2026-11-30T01:45:00.000Z"], // UTC+05:45
  ["Australia/Adelaide", "2026-11-29T21:00:00.000Z"], // UTC+10:30 in summer
  ["America/St_Johns", "2026-11-29T11:00:00.000Z"], // UTC-03:30, not yet 07:30 on the 30th
])("07:30 in %s, off the full hour", (zone, expected) => {
  expect(last("07:30", zone, "2026-11-30T05:00:00Z")).toBe(expected);
});

test("once a local day, whatever the zone, the time and the day: due moments are 23 to 25 hours apart", () => {
  const zones = ["Europe/London", "Asia/Kathmandu", "Australia/Lord_Howe", "America/St_Johns", "Pacific/Chatham"];
  fc.assert(
    fc.property(
      fc.constantFrom(...zones),
      fc.integer({ min: 0, max: 1439 }),
      fc.integer({ min: at("2026-01-05T00:00:00Z"), max: at("2026-12-28T00:00:00Z") }),
      (zone, minutes, now) => {
        const time = `${String(Math.floor(minutes / 60)).padStart(2, "0")}:${String(minutes % 60).padStart(2, "0")}`;
        const due = lastTimeOfDay(time, zone, now);
        expect(due).toBeLessThanOrEqual(now);
        expect(now - due).toBeLessThanOrEqual(25 * HOUR_MS);
        const before = lastTimeOfDay(time, zone, due - 1);
        expect((due - before) / HOUR_MS).toBeGreaterThanOrEqual(23);
        expect((due - before) / HOUR_MS).toBeLessThanOrEqual(25);
        expect(lastTimeOfDay(time, zone, due)).toBe(due);
        // Shown by the wall clock itself, but for a time that is left out that day: that comes as much later as was left
        // out, so a whole day after the one before, and the next one sooner.
        const shown = timeOfMoment(due, inZone(zone));
        if (shown !== time) {
          expect(shown > time).toBe(true);
          expect(due - before).toBe(24 * HOUR_MS);
          expect(lastTimeOfDay(time, zone, due + 24 * HOUR_MS) - due).toBeLessThan(24 * HOUR_MS);
        }
      },
    ),
    {
      numRuns: 2000,
      // The hours, of 8,760 in the year, in which a time is left out; Lord Howe leaves out half of one.
      examples: [
        ["Europe/London", 60, at("2026-03-29T01:00:00Z")],
        ["Europe/London", 119, at("2026-03-29T12:00:00Z")],
        ["Australia/Lord_Howe", 135, at("2026-10-04T12:00:00Z")],
        ["Pacific/Chatham", 165, at("2026-09-26T23:00:00Z")],
      ],
    },
  );
});

test("what is no time and no zone is never due", () => {
  expect(lastTimeOfDay("7:30", "Europe/London", 0)).toBe(Number.NEGATIVE_INFINITY);
  expect(lastTimeOfDay("24:00", "Europe/London", 0)).toBe(Number.NEGATIVE_INFINITY);
  expect(lastTimeOfDay("07:30", "Europe/Port Ellery", 0)).toBe(Number.NEGATIVE_INFINITY);
  expect([isClockTime("00:00"), isClockTime("23:59"), isClockTime("23:60"), isClockTime("07:30\n")]).toEqual([
    true,
    true,
    false,
    false,
  ]);
  expect([isTimeZone("UTC"), isTimeZone("Asia/Kathmandu"), isTimeZone("nowhere"), isTimeZone("")]).toEqual([
    true,
    true,
    false,
    false,
  ]);
});

test("a day is named as it is where its reader is", () => {
  expect(dayOfMoment(at("2026-11-30T23:30:00Z"), inZone("Europe/London"))).toBe("Monday 30 November");
  expect(dayOfMoment(at("2026-11-30T23:30:00Z"), inZone("Asia/Kathmandu"))).toBe("Tuesday 1 December");
});
