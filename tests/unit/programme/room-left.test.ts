/** The month's editor refuses what the month file's contract refuses: more than 1,000 classes, with those of the pattern. */
import { describe, expect, it } from "vitest";
import { crossCheckMonth } from "#lib/month/file/cross-check.ts";
import type { MonthFile, MonthSlot, PatternLine } from "#lib/month/types.ts";
import { createMonthDoc } from "#lib/programme/create.ts";
import { readMonthState } from "#lib/programme/read.ts";
import { roomLeft, tooManyWithLine } from "#lib/programme/room-left.ts";
import { copyWeek } from "#lib/programme/write-many.ts";
import { withRule } from "#lib/programme/write-pattern.ts";
import { busyMonth } from "#tests/support/busy-month.ts";

const [FIRST] = busyMonth({ coaches: 1, slots: 16, plans: 1 }).slots as [MonthSlot];
/** March 2026 has five Mondays and four Wednesdays; no other line. */
const monthOf = (singles: number, pattern: readonly PatternLine[] = []): MonthFile => ({
  ...busyMonth({ coaches: 12, slots: 16, plans: 60 }),
  pattern,
  slots: Array.from({ length: singles }, (_, i) => ({ ...FIRST, id: `s-${i}`, date: "2026-03-02" })),
});
const line = (days: number[]): PatternLine => ({ id: "new", days, start: "06:00", minutes: 30 });
const isTaken = (file: MonthFile): boolean => crossCheckMonth(file) === undefined;

describe("a month with as many classes as it may have", () => {
  it("takes a line as long as the file does, and says what it would have otherwise", () => {
    for (const singles of [0, 994, 995, 996, 1000]) {
      const file = monthOf(singles);
      const refused = tooManyWithLine(file, line([1]));
      expect(refused === undefined).toBe(isTaken({ ...file, pattern: [line([1])] }));
      expect(roomLeft(file)).toBe(1000 - singles);
    }
    expect(tooManyWithLine(monthOf(996), line([1]))).toBe(
      "A month holds at most 1,000 classes, and would have 1,001. Nothing was changed.",
    );
  });
  it("takes other days of a line as long as there is room for them, and always fewer", () => {
    const file = monthOf(993, [line([1])]);
    expect(tooManyWithLine(file, withRule(line([1]), { days: [1, 3] }))).toContain("would have 1,002");
    expect(tooManyWithLine(file, withRule(line([1]), { every: 2 }))).toBeUndefined();
    expect(tooManyWithLine(monthOf(1200, [line([1, 3])]), withRule(line([1, 3]), { days: [3] }))).toBeUndefined();
  });
  it("takes no part of a week that it has no room for", () => {
    const slots = ["07:00", "08:00"].map((start, i) => ({ id: `a${i}`, date: "2026-03-02", start, minutes: 30 }));
    const doc = createMonthDoc("2026-03", { slots });
    const before = readMonthState(doc);
    let n = 0;
    const options = { newId: () => `n${++n}`, now: 1 };
    const copied = copyWeek({ doc, origin: "me" }, "2026-03-02", "2026-03-09", { ...options, room: 1 });
    expect(copied).toEqual({ added: [], changed: [], there: 0, noDay: 0, over: 1 });
    expect(readMonthState(doc)).toEqual(before);
    expect(copyWeek({ doc, origin: "me" }, "2026-03-02", "2026-03-09", { ...options, room: 2 }).added).toHaveLength(2);
  });
});
