/** What the month's page works out by itself: parts of the day, words, where sign-in leads back to. */
import { describe, expect, it } from "vitest";
import { dayPartOf, weekByParts } from "#app/_month/day-parts.ts";
import { dayWords, monthTitle, openSums, openWords, slotPlanWords } from "#app/_month/month-words.ts";
import type { Slot } from "#lib/programme/layout.ts";
import type { MonthProblem, MonthProblemKind } from "#lib/programme/problems.ts";

const slot = (id: string, date: string, time: string): Slot => ({
  ...{ id, date, time, minutes: 30, theme: "", coachId: null, roomId: null, planId: null, note: "" },
});

describe("a week's rows", () => {
  it("puts every minute of the day in one part", () => {
    expect(["00:00", "11:29", "11:30", "15:59", "16:00", "23:59"].map(dayPartOf)).toEqual([
      "morning",
      "morning",
      "midday",
      "midday",
      "evening",
      "evening",
    ]);
  });
  it("has a row only for parts that some day needs, in the order of the day", () => {
    const days = ["2026-11-02", "2026-11-03"];
    const slots = [
      slot("a", "2026-11-03", "18:00"),
      slot("b", "2026-11-02", "07:00"),
      slot("c", "2026-11-09", "12:00"),
    ];
    const { dayParts, of } = weekByParts(days, slots);
    expect(dayParts).toEqual(["morning", "evening"]);
    expect(
      [...of.values()]
        .flat()
        .map(({ id }) => id)
        .sort(),
    ).toEqual(["a", "b"]);
  });
});

describe("words", () => {
  // 3 November 2026 is a Tuesday: ISO 8601 week 45 of 2026 begins on Monday 2 November.
  it("names days and months", () => {
    expect(dayWords("2026-11-03")).toBe("Tuesday 3 November");
    expect(monthTitle("2027-01")).toBe("January 2027");
  });
  it("sums up what is still to do, a clash once for its two classes", () => {
    const problem = (kind: MonthProblemKind, ...slots: string[]): MonthProblem => ({ kind, slots, message: "" });
    const clash = problem("room-clash", "a", "b");
    const problems = new Map([
      ["a", [clash, problem("no-plan", "a")]],
      ["b", [clash, clash]],
      ["c", [problem("plan-changed", "c")]],
    ]);
    expect(openSums(4, problems)).toBe("4 classes; still to do: 1 without a plan, 1 not signed off, 1 clash");
    expect(openSums(1, new Map())).toBe("1 class");
    expect(openWords(problems.get("b") ?? [])).toBe("room booked twice");
  });
  it("says of a signed plan that was written on that its edition still stands", () => {
    const plan = { id: "p", title: "", lengthSeconds: 1500, ownerName: "", edition: 2 };
    expect(slotPlanWords({ ...plan, state: "signed-off" })).toBe("edition 2");
    expect(slotPlanWords({ ...plan, state: "in-writing" })).toBe("edition 2, in writing again");
    expect(slotPlanWords({ ...plan, edition: 0, state: "handed-in" })).toBe("offered for reading");
  });
});
