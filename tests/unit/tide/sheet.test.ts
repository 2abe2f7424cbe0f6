/**
 * The month's sheet: no words over other words or marks, none outside their column; a drop ends at the hour at which the rest
 * is over; what a reader of the table hears.
 */

import { describe, expect, it } from "vitest";
import { dayNumber } from "#lib/calendar/days.ts";
import { wallTimeAt } from "#lib/calendar/zone.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { MonthAnalyst } from "#lib/month/check/analyst.ts";
import type { MonthFile } from "#lib/month/types.ts";
import { HEAD_TO_FOOT } from "#lib/tide/columns.ts";
import { tideLayout } from "#lib/tide/layout.ts";
import { labelWidth } from "#lib/tide/rail-labels.ts";
import { daysBetween, tideSheet } from "#lib/tide/sheet.ts";
import type { Measure, TideKind, TideSheet } from "#lib/tide/types.ts";
import { crowdedMonth, marchMonth } from "../../support/tide-month.ts";

/** Wider than the page's own typeface: an average letter of it is about half its size wide. */
const measure: Measure = (words, bold) => words.length * (bold ? 7.4 : 6.8);
const DAY_PX = 21;

function sheetOf(month: MonthFile, kind: TideKind, width: number, regulars = "evening"): TideSheet {
  const { sums, findings } = new MonthAnalyst().look(month);
  const of = {
    month,
    sums,
    findings,
    regulars,
    rooms: Object.keys(month.rooms),
    groups: HEAD_TO_FOOT,
    formats: STANDARD_FORMATS,
  };
  const coaches = Object.keys(month.coaches).length;
  const layout = tideLayout({ kind, width, groups: 16, coaches, allCoaches: false });
  const tops = Array.from({ length: daysBetween(month.dates).length + 1 }, (_, i) => i * DAY_PX);
  const { rail, group, findings: findingsWidth } = layout;
  return tideSheet(of, {
    kind,
    railWidth: rail,
    groupWidth: group,
    findingsWidth: findingsWidth || rail,
    tops,
    measure,
  });
}

const railOf = (kind: TideKind, width: number, month: MonthFile): number =>
  tideLayout({ kind, width, groups: 16, coaches: Object.keys(month.coaches).length, allCoaches: false }).rail;

const MONTHS: readonly (readonly [string, MonthFile])[] = [
  ["two rooms, four coaches", marchMonth()],
  ["one room", crowdedMonth({ rooms: 1, coaches: 3 })],
  ["two rooms, twelve coaches", crowdedMonth({ rooms: 2, coaches: 12 })],
  ["three rooms, twelve coaches", crowdedMonth({ rooms: 3, coaches: 12 })],
];

describe.each(MONTHS)("words on the rail: %s", (_, month) => {
  it.each([1392, 1240, 1180])(
    "beside the marks of a laptop's %s px: over no mark, no other words, none cut off",
    (width) => {
      const rail = railOf("laptop", width, month);
      for (const { date, marks, labels } of sheetOf(month, "laptop", width).days) {
        const taken = marks.map(({ x, width: wide }) => [x, x + wide] as const);
        const places = labels.map(({ x, width: wide }) => [x, x + wide] as const);
        for (const [i, [from, to]] of places.entries()) {
          expect(from, date).toBeGreaterThanOrEqual(0);
          expect(to, date).toBeLessThanOrEqual(rail);
          for (const [a, b] of places.slice(i + 1))
            expect(to <= a || b <= from, `${date}: ${from}-${to}, ${a}-${b}`).toBe(true);
          for (const [a, b] of taken)
            expect(to <= a || b <= from, `${date}: words ${from}-${to} over ${a}-${b}`).toBe(true);
        }
      }
    },
  );
  it("under the marks of a tablet: on each line over no other words", () => {
    const rail = railOf("tablet", 794, month);
    for (const { date, labels } of sheetOf(month, "tablet", 794).days) {
      for (const [i, a] of labels.entries()) {
        expect(a.x + a.width, date).toBeLessThanOrEqual(rail);
        for (const b of labels.slice(i + 1))
          expect(a.line !== b.line || a.x + a.width <= b.x || b.x + b.width <= a.x, date).toBe(true);
      }
    }
  });
  it("name every class, or say how many there are", () => {
    for (const { marks, labels } of sheetOf(month, "laptop", 1392).days) {
      const named = labels.reduce((sum, { parts }) => sum + parts.length, 0);
      expect(named).toBe(marks.length);
      for (const label of labels) expect(label.width).toBeCloseTo(labelWidth(label, measure));
    }
  });
});

describe("drops", () => {
  const month = marchMonth();
  const sheet = sheetOf(month, "laptop", 1392);
  const { sums } = new MonthAnalyst().look(month);
  const yOf = (at: number) => (wallTimeAt(at, month.zone) / 86_400_000 - dayNumber("2026-03-01")) * DAY_PX;

  it("begin at the class's hour and end at the hour at which 48 hours of rest are over", () => {
    // ACSM, at least 48 h between sessions of the same muscle group (secondary pages; see lib/month/types.ts).
    const drop = sheet.drops.find(({ slot, group }) => slot === "we-late-20260311" && group === "chest");
    expect(drop?.top).toBeCloseTo(10 * DAY_PX + (18.5 / 24) * DAY_PX, 6);
    expect(drop?.end).toBeCloseTo(12 * DAY_PX + (19 / 24) * DAY_PX, 6);
    for (const { slot, end } of sheet.drops) {
      const timed = sums.slots.find((one) => one.slot.id === slot);
      const rested = yOf((timed?.to ?? 0) + 48 * 3_600_000);
      expect(end).toBeCloseTo(Math.min(rested, 31 * DAY_PX), 6);
    }
  });
  it("end by the wall clock, an hour later when the clocks go forward on the way", () => {
    // Lisbon puts its clocks forward on Sunday 29 March 2026 (IANA time zone database).
    const drop = sheet.drops.find(({ slot, group }) => slot === "sa-early-20260328" && group === "glutes");
    expect(drop?.end).toBeCloseTo(29 * DAY_PX + ((10 + 20 / 60 + 1) / 24) * DAY_PX, 6);
  });
  it("are as wide as the work, the widest within its column, pale below the heavy limit", () => {
    const widest = Math.max(...sheet.drops.map(({ width }) => width));
    expect(widest).toBeLessThan(22);
    const most = Math.max(...sheet.drops.map(({ work }) => work));
    for (const { work, width, heavy } of sheet.drops) {
      if (width > 4) expect(width).toBeCloseTo((work / most) * widest, 6);
      expect(heavy).toBe(work >= 300);
    }
  });
  it("with a rest that a group has of its own end by it", () => {
    const own = { ...month, limits: { recoveryBy: { chest: 72 } } };
    const drop = sheetOf(own, "laptop", 1392).drops.find(
      (one) => one.slot === "we-late-20260311" && one.group === "chest",
    );
    expect(drop?.end).toBeCloseTo(13 * DAY_PX + (19 / 24) * DAY_PX, 6);
  });
  it("are hatched from the second class to the end of the first one's rest, with the hours between", () => {
    const cut = sheet.collisions.find(({ finding }) => finding === "short-recovery:evening:chest:2026-03-12");
    expect(cut).toMatchObject({ hours: 23 });
    expect(cut?.top).toBeCloseTo(11 * DAY_PX + (18 / 24) * DAY_PX, 6);
    expect(cut?.end).toBeCloseTo(12 * DAY_PX + (19 / 24) * DAY_PX, 6);
    expect(sheet.collisions.map(({ finding }) => finding)).toHaveLength(4);
  });
});

describe("the table's words", () => {
  const sheet = sheetOf(marchMonth(), "laptop", 1392);
  const day = (date: string) => sheet.days.find((one) => one.date === date);

  it("say each group's work, and the rest before it", () => {
    const words = day("2026-03-12")?.groups.map((cell) => cell.words);
    expect(words).toContain("shoulders, heavy, 23 h after the last");
    expect(words).toContain("obliques, light");
  });
  it("say a class in full", () => {
    expect(day("2026-03-12")?.marks[0]?.words).toBe(
      "18:00 to 18:50, Upper, trunk, Marta Reis, Loft, Evening regulars, plan signed",
    );
  });
  it("put what is one thing to mend in one line, the gravest first, and a pair on its later day", () => {
    expect(day("2026-03-12")?.lines.map(({ words }) => words)).toEqual(["chest, shoulders after 23 h"]);
    expect(day("2026-03-04")?.lines.map(({ words }) => words)).toEqual(["Jonas is no coach, 4 times"]);
    expect(day("2026-03-14")?.lines[0]).toMatchObject({ level: "must", words: "Marta twice at 09:45" });
    expect(day("2026-03-28")?.lines.map(({ words }) => words)).toEqual([
      "13 people, 12 machines",
      "2 muscle groups after 38 h 40",
      "no coach",
    ]);
  });
  it("give a coach's minutes, a clash and the gaps", () => {
    const marta = day("2026-03-14")?.coaches.find(({ coach }) => coach === "marta");
    expect(marta).toMatchObject({ minutes: 95, double: true, words: "95 min, 2 classes, two classes at once" });
    expect(day("2026-03-21")?.coaches.find(({ coach }) => coach === "marta")).toMatchObject({ tight: true });
  });
  it("end a week with its sum", () => {
    expect(day("2026-03-15")?.week).toMatch(/^Week: \d+ moves, work [+−]\d+%$/);
    expect(day("2026-03-14")?.week).toBe("");
  });
});

describe("the width", () => {
  it("is shared out in full, at one to twelve coaches", () => {
    for (const coaches of [1, 4, 8, 12]) {
      const l = tideLayout({ kind: "laptop", width: 1392, groups: 16, coaches, allCoaches: false });
      expect(l.date + l.rail + 16 * l.group + l.like + l.coaches * l.coach + l.findings).toBe(1392);
      expect(l.rail).toBeGreaterThanOrEqual(400);
    }
  });
  it("gives twelve coaches a column each in place of what to mend", () => {
    const l = tideLayout({ kind: "laptop", width: 1392, groups: 16, coaches: 12, allCoaches: true });
    expect(l).toMatchObject({ coaches: 12, findings: 0 });
    expect(l.rail).toBeGreaterThanOrEqual(400);
  });
});
