import { describe, expect, it } from "vitest";
import { zoneLines } from "#lib/month/ics/zone-part.ts";

const onsets = (lines: readonly string[]) =>
  lines.flatMap((line, i) =>
    line.startsWith("DTSTART:") ? [`${lines[i - 1]?.slice(6)} ${line.slice(8)} ${lines[i + 2]?.slice(-5)}`] : [],
  );

// Dates and offsets: IANA time zone database, from memory; the platform's own tables are what is read.
describe("the zone of a calendar", () => {
  it("begins with the last change before and has those within", () =>
    expect(onsets(zoneLines("Europe/Lisbon", "2026-03-01", "2026-03-31"))).toEqual([
      "STANDARD 20251026T020000 +0000",
      "DAYLIGHT 20260329T010000 +0100",
    ]));

  it("has a change on the day after the last class, which may end then", () =>
    expect(onsets(zoneLines("Europe/Lisbon", "2026-03-01", "2026-03-28")).at(-1)).toBe(
      "DAYLIGHT 20260329T010000 +0100",
    ));

  it("stops at midnight two days after", () =>
    expect(onsets(zoneLines("Europe/Lisbon", "2026-03-01", "2026-03-27"))).toHaveLength(1));

  it("says the one offset of a zone that does not change", () => {
    expect(zoneLines("Asia/Kolkata", "2026-03-01", "2026-03-31")).toEqual([
      "BEGIN:VTIMEZONE",
      "TZID:Asia/Kolkata",
      "BEGIN:STANDARD",
      "DTSTART:19700101T000000",
      "TZOFFSETFROM:+0530",
      "TZOFFSETTO:+0530",
      "END:STANDARD",
      "END:VTIMEZONE",
    ]);
    expect(zoneLines("UTC", "2026-03-01", "2026-03-31")).toContain("TZOFFSETTO:+0000");
    expect(zoneLines("America/St_Johns", "2026-01-10", "2026-01-10")).toContain("TZOFFSETTO:-0330");
    expect(zoneLines("Pacific/Marquesas", "2026-01-10", "2026-01-10")).toContain("TZOFFSETTO:-0930");
  });

  it("has half an hour of summer time, and summer across the new year", () => {
    expect(onsets(zoneLines("Australia/Lord_Howe", "2026-04-01", "2026-04-30"))).toEqual([
      "DAYLIGHT 20251005T020000 +1100",
      "STANDARD 20260405T020000 +1030",
    ]);
    expect(onsets(zoneLines("Australia/Sydney", "2026-01-01", "2026-01-31"))).toEqual([
      "DAYLIGHT 20251005T020000 +1100",
    ]);
  });

  it("counts a change at the first midnight as one within", () => {
    // In Beirut the clock goes forward at 00:00 on the last Sunday of March.
    expect(onsets(zoneLines("Asia/Beirut", "2026-03-29", "2026-03-29"))).toEqual([
      "STANDARD 20251026T000000 +0200",
      "DAYLIGHT 20260329T000000 +0300",
    ]);
  });

  it("has four changes where a year has four", () =>
    // In Casablanca the clock stands back during Ramadan, about 18 February to 19 March 2026.
    expect(
      onsets(zoneLines("Africa/Casablanca", "2026-02-01", "2026-04-01")).map((said) => said.split(" ")[0]),
    ).toEqual(["DAYLIGHT", "STANDARD", "DAYLIGHT"]));
});
