/** How a class ended and what it trained, worked by hand; and sums by what classes have in common. */
import { describe, expect, test } from "vitest";
import type { ClassLogRow } from "#lib/floor/class-log-schema.ts";
import { bestEnd, type ClassOutcome, taughtSum, taughtSumsBy } from "#lib/look-back/sums.ts";
import { plannedGroups, secondsOver, taughtEnd, taughtGroups } from "#lib/look-back/taught.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { samplePlan } from "../card/sample-plan.ts";

const row = (phase: ClassLogRow["phase"], item: string | null, planned: number, more: Partial<ClassLogRow> = {}) => ({
  ...{ phase, item, planned, given: planned, took: planned, held: 0 },
  ...more,
});

describe("a class", () => {
  const rows = [row("work", "a", 60), row("work", "b", 60, { took: 40, held: 30 })];

  test("ran to its end, ended early, or was only begun: before half of its plan", () => {
    expect(taughtEnd({ rows, whole: true }, 1000)).toBe("whole");
    expect(taughtEnd({ rows, whole: false }, 260)).toBe("early"); // 130 of 260
    expect(taughtEnd({ rows, whole: false }, 261)).toBe("abandoned");
  });

  test("took its seconds and holds, against what it came to", () => {
    expect(secondsOver({ rows })).toBe(10);
  });

  test("trained what its work took, by the weights of its moves; what was left out is none", () => {
    const plan: Plan = samplePlan();
    const items = plan.items.filter((item) => item.kind === "move");
    const log = { rows: items.map((item) => row("work", item.id, item.seconds)) };
    expect(taughtGroups(plan, log)).toEqual(plannedGroups(plan));
    const half = { rows: items.map((item) => row("work", item.id, item.seconds, { took: item.seconds / 2 })) };
    for (const [group, seconds] of Object.entries(plannedGroups(plan)))
      expect(taughtGroups(plan, half)).toHaveProperty(group, seconds / 2);
    expect(taughtGroups(plan, { rows: [] })).toEqual({});
  });
});

describe("sums", () => {
  const one = (more: Partial<ClassOutcome> = {}): ClassOutcome => ({
    ...{ minutes: 45, end: "whole", theme: null, coach: "marta", regulars: [] },
    ...more,
  });

  test("count what was taught, begun and not told of; the best of several logs counts", () => {
    expect(
      taughtSum([one(), one({ end: "early" }), one({ end: "abandoned" }), one({ end: "none", minutes: 60 })]),
    ).toEqual({ planned: 4, taught: 2, abandoned: 1, noLog: 1, plannedMinutes: 195, taughtMinutes: 90 });
    expect(bestEnd(["abandoned", "whole"])).toBe("whole");
    expect(bestEnd([])).toBe("none");
  });

  test("a class with two groups of regulars counts for both, one with none for nobody", () => {
    const sums = taughtSumsBy([one({ regulars: ["a", "b"] }), one({ regulars: ["a"] }), one()], (c) => c.regulars);
    expect([...sums].map(([id, { planned }]) => [id, planned])).toEqual([
      ["a", 2],
      ["b", 1],
      ["", 1],
    ]);
  });
});
