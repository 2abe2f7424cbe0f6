/** The month by hand, worked out: the axis there and back, steps between days and classes, five minutes on, tried plans. */

import { describe, expect, it } from "vitest";
import { minuteOfDay } from "#lib/calendar/days.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { MonthAnalyst } from "#lib/month/check/analyst.ts";
import { draggedTo } from "#lib/tide/drag.ts";
import { type Moving, startLater, withSlots } from "#lib/tide/preview.ts";
import { tideSheet } from "#lib/tide/sheet.ts";
import { SheetKept } from "#lib/tide/sheet-kept.ts";
import { classesOn, daysOn } from "#lib/tide/steps.ts";
import { minuteOfX, timeAxis, xOfMinute } from "#lib/tide/time-axis.ts";
import { plansFor, tryPlan } from "#lib/tide/try-plans.ts";
import { marchMonth } from "../../support/tide-month.ts";

const at = (start: string, minutes = 50) => ({ start, minutes });

describe("the hours across", () => {
  const axis = timeAxis([at("07:00"), at("11:00"), at("18:00"), at("18:30", 30)], 540);
  it("leave out an idle afternoon of their own classes, not of a fixed hour", () => {
    expect(axis.pieces.map(({ from, to }) => [from / 60, to / 60])).toEqual([
      [7, 8],
      [11, 12],
      [18, 19],
    ]);
    expect(timeAxis([at("10:00"), at("12:30")], 540).pieces).toHaveLength(1);
  });
  it("lead from a minute to its place and back", () => {
    for (const minute of [7 * 60, 7 * 60 + 35, 11 * 60 + 5, 18 * 60, 18 * 60 + 55])
      expect(minuteOfX(axis, xOfMinute(axis, minute), 5)).toBe(minute);
  });
  it("never go backwards", () => {
    const xs = Array.from({ length: 24 * 12 }, (_, i) => xOfMinute(axis, i * 5));
    expect(xs.every((x, i) => i === 0 || x >= (xs[i - 1] ?? 0))).toBe(true);
  });
  it("are whole and within their width for a month without classes", () => {
    const none = timeAxis([], 300);
    expect(none.pieces).toHaveLength(1);
    expect(none.ticks.every(({ x }) => x >= 0 && x <= 300)).toBe(true);
  });
});

describe("a class that is dragged", () => {
  const month = marchMonth();
  const { slots } = new MonthAnalyst().look(month);
  const late = slots.find((one) => one.slot.id === "th-late-20260312")?.slot;
  const tops = Array.from({ length: 32 }, (_, i) => i * 21);
  const [railWidth, y] = [600, 11 * 21 + 10];

  /** The sheet as the page lays it out while the class is there; null: as it was before. */
  function dragging() {
    const kept = new SheetKept();
    const analyst = new MonthAnalyst();
    return (to: Moving | null) => {
      const tried = withSlots(month, to && late ? [{ ...late, date: to.date, start: to.start }] : []);
      const { sums, findings } = analyst.look(tried);
      const of = {
        sums,
        findings,
        regulars: null,
        rooms: Object.keys(month.rooms),
        groups: [],
        formats: STANDARD_FORMATS,
      };
      const sizes = { kind: "laptop", railWidth, groupWidth: 20, findingsWidth: 200, tops } as const;
      const measure = (words: string) => words.length * 7;
      return tideSheet({ month: tried, ...of, holdsHours: to !== null }, { ...sizes, measure }, kept);
    };
  }

  it("follows the hand at the hours' own scale, although each step shows it where it would be", () => {
    if (!late) throw new Error("no class");
    const layOut = dragging();
    const before = layOut(null);
    const last = before.axis.pieces.at(-1);
    if (!last) throw new Error("no hours");
    const minutesPerPx = (last.to - last.from) / (last.x1 - last.x0);
    let sheet = before;
    for (let dx = 15; dx <= 150; dx += 15) {
      const to = draggedTo({ slot: late.id, start: late.start, dx, y }, sheet, tops);
      if (!to) throw new Error("nowhere");
      const minute = Math.min(minuteOfDay("23:55"), minuteOfDay(late.start) + dx * minutesPerPx);
      expect(Math.abs(minuteOfDay(to.start) - minute), `${dx} px: ${to.start}`).toBeLessThanOrEqual(2.5 + 1e-9);
      expect(to.date).toBe("2026-03-12");
      sheet = layOut(to);
      expect(sheet.axis).toEqual(before.axis);
    }
    expect(layOut(null).axis).toEqual(before.axis);
  });
  it("stands beyond the last hour while it is on its way, and within the rail", () => {
    if (!late) throw new Error("no class");
    const layOut = dragging();
    const end = layOut(null).axis.pieces.at(-1);
    const markAt = (start: string) =>
      layOut({ slot: late.id, date: late.date, start }).days.flatMap(({ marks }) =>
        marks.filter(({ slot }) => slot.id === late.id),
      )[0];
    const [near, far] = [markAt("22:00"), markAt("23:55")];
    expect(near?.x).toBeGreaterThan(end?.x1 ?? 0);
    expect(far?.x).toBeGreaterThanOrEqual(near?.x ?? 0);
    expect((far?.x ?? 0) + (far?.width ?? 0)).toBeLessThanOrEqual(railWidth);
  });
  it("goes to the day under the hand, and stays on the first or last beyond them", () => {
    const sheet = dragging()(null);
    const on = (at: number) => draggedTo({ slot: "x", start: "18:00", dx: 0, y: at }, sheet, tops);
    expect(on(21 * 4 + 1)).toEqual({ slot: "x", date: "2026-03-05", start: "18:00" });
    expect([on(-40)?.date, on(5000)?.date]).toEqual(["2026-03-01", "2026-03-31"]);
  });
});

describe("steps", () => {
  const mark = (id: string, start: string) => ({ slot: { id, date: "", start, minutes: 30 } });
  const days = [
    { date: "2026-03-02", marks: [mark("a", "07:00"), mark("b", "18:00")] },
    { date: "2026-03-03", marks: [] },
    { date: "2026-03-04", marks: [mark("c", "07:00"), mark("d", "17:30")] },
  ] as unknown as Parameters<typeof daysOn>[0];
  it("down lead to the class nearest in time, or to a day without classes", () => {
    expect(daysOn(days, { date: "2026-03-02", slot: "b" }, 2)).toEqual({ date: "2026-03-04", slot: "d" });
    expect(daysOn(days, { date: "2026-03-02", slot: "b" }, 1)).toEqual({ date: "2026-03-03", slot: null });
    expect(daysOn(days, { date: "2026-03-04", slot: "c" }, 9)).toEqual({ date: "2026-03-04", slot: "c" });
  });
  it("across lead from the day to its classes and stop at the last", () => {
    expect(classesOn(days, { date: "2026-03-02", slot: null }, 1)).toEqual({ date: "2026-03-02", slot: "a" });
    expect(classesOn(days, { date: "2026-03-02", slot: "b" }, 1)).toEqual({ date: "2026-03-02", slot: "b" });
    expect(classesOn(days, { date: "2026-03-02", slot: "a" }, -1)).toEqual({ date: "2026-03-02", slot: null });
  });
  it("of five minutes stay on the grid and within the day", () => {
    expect(startLater("18:00", 1)).toBe("18:05");
    expect(startLater("18:02", -1)).toBe("17:55");
    expect(startLater("23:55", 1)).toBe("23:55");
    expect(startLater("00:00", -1)).toBe("00:00");
  });
});

describe("a month as it would be", () => {
  const month = marchMonth();
  const analyst = new MonthAnalyst();
  const { slots, findings } = analyst.look(month);
  const slot = slots.find((one) => one.slot.id === "th-late-20260312")?.slot;
  it("with a class of the pattern elsewhere finds what a changed class there would", () => {
    const moved = withSlots(month, slot ? [{ ...slot, date: "2026-03-13", start: "20:00" }] : []);
    const ids = new MonthAnalyst().look(moved).findings.map(({ id }) => id);
    expect(ids).not.toContain("short-recovery:evening:chest:2026-03-12");
    expect(withSlots(month, [])).toBe(month);
  });
  it("with another plan: the one for the trunk takes both short rests away and brings nothing", () => {
    if (!slot) throw new Error("no class");
    expect(plansFor(month, slot)).not.toContain("draft");
    const tried = tryPlan(month, slot, "trunk", { look: (of) => analyst.look(of), before: findings });
    expect(tried.gone.map(({ id }) => id)).toEqual([
      "short-recovery:evening:chest:2026-03-12",
      "short-recovery:evening:shoulders:2026-03-12",
    ]);
    expect(tried.brought).toEqual([]);
  });
});
