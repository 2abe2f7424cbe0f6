/**
 * A month's calendar against what is published: the clock changes of 2026 in three zones (IANA time zone database), the weekly and
 * n-th weekday examples of RFC 5545 §3.8.5.3, its example of folding (§3.1), and UUID version 5 (RFC 9562, appendix A.4).
 */
import { describe, expect, test } from "vitest";
import { dayNumber } from "#lib/calendar/days.ts";
import { momentOf } from "#lib/calendar/zone.ts";
import { calendarOf } from "#lib/month/ics/feed.ts";
import { contentLine } from "#lib/month/ics/text.ts";
import { uuidOfName } from "#lib/month/ics/uuid.ts";
import type { MonthFile, PatternLine } from "#lib/month/types.ts";
import clockChanges from "#tests/fixtures/month/1-clock-changes.json" with { type: "json" };
import rules from "#tests/fixtures/rfc5545-rrule.json" with { type: "json" };
import { feedMonth } from "#tests/support/feed-month.ts";
import { readByIcalJs, readByNodeIcal } from "#tests/support/read-feed.ts";

interface Expected {
  readonly ics?: readonly string[];
  readonly icsRead?: readonly { readonly wall: string; readonly from: string; readonly status: string }[];
}
const cases = clockChanges.cases.map(({ why, month, expect: wanted }) => ({
  why,
  month: month as unknown as MonthFile,
  wanted: wanted as Expected,
}));

describe("clock changes of 2026", () => {
  test.each(cases.filter(({ wanted }) => wanted.icsRead))("$why", ({ month, wanted }) => {
    const feed = calendarOf(month, {});
    const read = readByIcalJs(feed).events.map(({ wall, from, status }) => ({ wall, from, status }));
    expect(read).toEqual(wanted.icsRead);
    expect(readByNodeIcal(feed).map(({ from }) => from)).toEqual(wanted.icsRead?.map(({ from }) => from));
  });

  test.each(cases.filter(({ wanted }) => wanted.ics))("$why", ({ month, wanted }) => {
    expect(calendarOf(month, {})).toBe(wanted.ics?.map((line) => `${line}\r\n`).join(""));
  });
});

const DAYS = ["MO", "TU", "WE", "TH", "FR", "SA", "SU"];
/** A pattern line with this rule; undefined where a pattern has no such rule. */
function lineOf(rule: string, from: string): PatternLine | undefined {
  const part = new Map(rule.split(";").map((pair) => pair.split("=") as [string, string]));
  if (part.has("BYSETPOS") || part.has("BYMONTHDAY")) return undefined;
  const given = (part.get("BYDAY") ?? (DAYS[(dayNumber(from) + 3) % 7] as string)).split(",");
  const nth = [...new Set(given.map((day) => Number(day.slice(0, -2))))].filter((n) => n !== 0);
  return {
    id: "line",
    days: given.map((day) => DAYS.indexOf(day.slice(-2)) + 1),
    from,
    start: "09:00",
    minutes: 60,
    every: Number(part.get("INTERVAL") ?? 1),
    weekStart: part.get("WKST") === "SU" ? 7 : 1,
    count: Number(part.get("COUNT")),
    ...(nth.length > 0 ? { nth } : {}),
  };
}

describe("RFC 5545 §3.8.5.3", () => {
  const dated = ({ dtstart }: { dtstart: string }) =>
    `${dtstart.slice(0, 4)}-${dtstart.slice(4, 6)}-${dtstart.slice(6, 8)}`;
  const known = rules.cases.flatMap((given) => {
    const line = lineOf(given.rrule, dated(given));
    return line ? [{ name: given.name, dates: given.dates, line }] : [];
  });

  test("has seven rules that a pattern can say", () => expect(known).toHaveLength(7));

  test.each(known)("$name", ({ line, dates }) => {
    const span = { from: dates[0] as string, to: "1998-12-31" };
    const month = feedMonth({ zone: "America/New_York", dates: span, slots: [], pattern: [line] });
    const events = readByIcalJs(calendarOf(month, {})).events;
    expect(events.map(({ wall }) => wall)).toEqual(dates.map((date) => `${date}T09:00`));
    // EDT up to 25 October 1997, EST from the 26th to 4 April 1998, then EDT up to 24 October 1998.
    const summer = (date: string) => date < "1997-10-26" || (date > "1998-04-04" && date < "1998-10-25");
    expect(events.map(({ from }) => from)).toEqual(dates.map((date) => `${date}T${summer(date) ? "13" : "14"}:00:00Z`));
  });
});

test("a folded line unfolds as the example of §3.1 does", () => {
  const unfolded = (text: string) => text.replaceAll(/\r\n[ \t]/g, "");
  expect(unfolded(rules.fold_example.folded)).toBe(rules.fold_example.unfolded);
  expect(unfolded(contentLine(rules.fold_example.unfolded.repeat(3)))).toBe(
    `${rules.fold_example.unfolded.repeat(3)}\r\n`,
  );
});

test("UUID version 5 of www.example.com in the namespace of DNS", () => {
  // RFC 9562, appendix A.4; the namespace is in its section 6.6. Both from memory, and checked with Python's uuid module.
  expect(uuidOfName("6ba7b810-9dad-11d1-80b4-00c04fd430c8", "www.example.com")).toBe(
    "2ed6657d-e927-568b-95e1-2665a8aea6a2",
  );
});

test("a wall time that the clock skips or shows twice is written as it is, and read by §3.3.5", () => {
  const wallOf = (date: string, minutes: number) => dayNumber(date) * 86_400_000 + minutes * 60_000;
  const skipped = momentOf(wallOf("2026-03-08", 150), "America/New_York");
  expect({ ...skipped, at: new Date(skipped.at).toISOString() }).toEqual({
    at: "2026-03-08T07:30:00.000Z",
    kind: "skipped",
  });
  const twice = momentOf(wallOf("2026-11-01", 90), "America/New_York");
  expect({ ...twice, at: new Date(twice.at).toISOString() }).toEqual({ at: "2026-11-01T05:30:00.000Z", kind: "twice" });
});
