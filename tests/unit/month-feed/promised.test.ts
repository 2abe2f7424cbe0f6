import { describe, expect, it } from "vitest";
import { calendarOf } from "#lib/month/ics/feed.ts";
import { promisedMonth } from "#lib/month/ics/promised.ts";
import type { MonthSlot } from "#lib/month/types.ts";
import { feedMonth, feedSlot } from "#tests/support/feed-month.ts";

const SIGNED = "2026-02-20T09:30:00Z";
const LATER = "2026-03-09T07:00:00Z";
/** What is told on `today` of a class on 20 March that was signed and then became `live`. */
function told(today: string, live: Partial<MonthSlot> | null, signed: Partial<MonthSlot> | null = {}) {
  const month = (slot: Partial<MonthSlot> | null, changedAt: string) =>
    feedMonth({ changedAt, slots: slot ? [feedSlot({ date: "2026-03-20", ...slot })] : [] });
  return promisedMonth(month(signed, SIGNED), month(live, LATER), today);
}
const slotOf = (...args: Parameters<typeof told>) => told(...args).slots[0];

describe("a class that was changed after its month was signed off", () => {
  const changed = { start: "08:00", sequence: 1, changedAt: LATER };

  it("is told as it was signed while it lies ahead", () => {
    expect(slotOf("2026-03-16", changed)).toMatchObject({ start: "07:00", changedAt: SIGNED });
    expect(slotOf("2026-03-16", { ...changed, out: true })?.out).toBeUndefined();
  });

  it("is told as it stands from three days before, and stays so", () => {
    for (const today of ["2026-03-17", "2026-03-20", "2026-03-21", "2026-04-30"])
      expect(slotOf(today, changed)).toMatchObject({ start: "08:00", sequence: 1, changedAt: LATER });
  });

  it("that is moved away from a near day, or to one, is told as it stands", () => {
    const away = { date: "2026-03-30", sequence: 1, changedAt: LATER };
    for (const today of ["2026-03-17", "2026-03-23"]) expect(slotOf(today, away)?.date).toBe("2026-03-30");
    const nearer = { date: "2026-03-12", sequence: 1, changedAt: LATER };
    expect(slotOf("2026-03-08", nearer)?.date).toBe("2026-03-20");
    expect(slotOf("2026-03-09", nearer)?.date).toBe("2026-03-12");
  });

  it("that is new since is told when it is near", () => {
    expect(told("2026-03-16", {}, null).slots).toEqual([]);
    expect(told("2026-03-17", {}, null).slots).toHaveLength(1);
  });

  it("that the live month does not hold any more is told as it was signed", () =>
    expect(told("2026-03-20", null).slots).toHaveLength(1));
});

it("an occurrence of the pattern is told by the same rule, with the stamp of its own month", () => {
  const line = { id: "early", days: [1], start: "07:00", minutes: 45 };
  const month = (start: string, changedAt: string) =>
    feedMonth({ changedAt, slots: [], pattern: [{ ...line, start }] });
  const { slots, pattern, changedAt } = promisedMonth(month("07:00", SIGNED), month("07:30", LATER), "2026-03-10");
  expect(pattern).toBeUndefined();
  expect(changedAt).toBe(LATER);
  expect(slots.map((slot) => [slot.date, slot.start, slot.changedAt])).toEqual([
    ["2026-03-02", "07:30", LATER],
    ["2026-03-09", "07:30", LATER],
    ["2026-03-16", "07:00", SIGNED],
    ["2026-03-23", "07:00", SIGNED],
    ["2026-03-30", "07:00", SIGNED],
  ]);
});

it("a theme that was renamed since keeps the name it was signed under, but for classes that are near", () => {
  const month = (name: string, changedAt: string) =>
    feedMonth({
      changedAt,
      themes: { whole: { name }, legs: { name: "Legs" } },
      slots: ["2026-03-12", "2026-03-20"].map((date) => feedSlot({ id: `on-${date}`, date, theme: "whole" })),
    });
  const text = calendarOf(promisedMonth(month("Whole body", SIGNED), month("Core", LATER), "2026-03-10"), {});
  const summaries = text.split("\r\n").filter((line) => /^(DTSTART;|SUMMARY)/.test(line));
  expect(summaries).toEqual([
    "DTSTART;TZID=Europe/Lisbon:20260312T070000",
    "SUMMARY:Core",
    "DTSTART;TZID=Europe/Lisbon:20260320T070000",
    "SUMMARY:Whole body",
  ]);
});
