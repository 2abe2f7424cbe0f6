/**
 * Worked examples of a month (`tests/fixtures/month`): clock changes of three zones from the tz database's published dates,
 * recovery by hand; and the weekly and n-th weekday examples of RFC 5545 §3.8.5.3 (`tests/fixtures/rfc5545-rrule.json`).
 */
import { describe, expect, test } from "vitest";
import { monthFindings, monthSums } from "#lib/month/check/analyst.ts";
import { occurrencesOf } from "#lib/month/expand.ts";
import { printCheck } from "#lib/month/file/print-check.ts";
import { printSums } from "#lib/month/file/print-sums.ts";
import { readMonthFile } from "#lib/month/file/read-month.ts";
import type { MonthFile, PatternLine } from "#lib/month/types.ts";
import clockChanges from "#tests/fixtures/month/1-clock-changes.json" with { type: "json" };
import recovery from "#tests/fixtures/month/2-recovery.json" with { type: "json" };
import rrule from "#tests/fixtures/rfc5545-rrule.json" with { type: "json" };

interface Worked {
  readonly why: string;
  readonly month: unknown;
  readonly expect: Readonly<Record<string, unknown>>;
}

function monthOf(value: unknown): MonthFile {
  const read = readMonthFile(JSON.stringify(value));
  if (!read.ok) throw new Error(read.say);
  return read.month;
}

const CASES: Worked[] = [...clockChanges.cases, ...recovery.cases];
const named = CASES.map((one) => [one.why.slice(0, 60), one] as const);

describe("worked examples", () => {
  test.each(named)("%s", (_, { month: given, expect: expected }) => {
    const month = monthOf(given);
    const { ids, check, sums } = expected;
    const found = printCheck(monthFindings(month));
    if (Array.isArray(ids)) expect(found.findings.map(({ id }) => id)).toEqual(ids);
    if (check) expect(found).toMatchObject(check);
    if (sums) expect(printSums(monthSums(month))).toMatchObject(sums);
  });

  test("there are some", () => {
    expect(CASES.length).toBeGreaterThan(8);
  });
});

const DAYS: Readonly<Record<string, number>> = { MO: 1, TU: 2, WE: 3, TH: 4, FR: 5, SA: 6, SU: 7 };

/** The rule as a line of a pattern; undefined for what a month file has no words for. */
function lineOf(text: string, first: string): PatternLine | undefined {
  const parts = Object.fromEntries(text.split(";").map((part) => part.split("="))) as Record<string, string>;
  if (parts.BYMONTHDAY || parts.BYSETPOS) return undefined;
  const by = (parts.BYDAY ?? "").split(",").flatMap((day) => /^(-?\d+)?([A-Z]{2})$/.exec(day)?.slice(1) ?? []);
  const days = by.flatMap((word) => DAYS[word] ?? []);
  const nth = by.flatMap((word) => (/^-?\d+$/.test(word) ? [Number(word)] : []));
  const weekday = ((new Date(`${first}T00:00:00Z`).getUTCDay() + 6) % 7) + 1;
  return {
    id: "line",
    start: "09:00",
    minutes: 45,
    days: days.length > 0 ? days : [weekday],
    from: first,
    every: Number(parts.INTERVAL ?? 1),
    weekStart: parts.WKST === "SU" ? 7 : 1,
    ...(parts.COUNT ? { count: Number(parts.COUNT) } : {}),
    ...(nth.length > 0 ? { nth } : {}),
  };
}

describe("RFC 5545's examples, in a month that begins with them", () => {
  const lines = rrule.cases.flatMap(({ name, rrule: text, dates }) => {
    const line = lineOf(text, dates[0] ?? "");
    return line ? [[name, line, dates] as const] : [];
  });

  test.each(lines)("%s", (_, line, dates) => {
    const month = { dates: { from: dates[0] ?? "", to: "1998-12-31" } };
    expect(occurrencesOf(line, month).map(({ date }) => date)).toEqual(dates);
  });

  test.each(lines)("%s: a later month gets the rest", (_, line, dates) => {
    const from = dates[2] ?? "";
    const month = { dates: { from, to: "1998-12-31" } };
    expect(occurrencesOf(line, month).map(({ date }) => date)).toEqual(dates.filter((date) => date >= from));
  });

  test("most can be said", () => {
    expect(lines.length).toBeGreaterThanOrEqual(6);
  });
});
