/** What would help where nothing fits: each offer is tried, is the least of its kind, and works. Worked out by hand. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { classClock } from "#lib/clock/clock.ts";
import { fitToLength } from "#lib/fit/fit.ts";
import { type FitHelp, whatHelps } from "#lib/fit/help.ts";
import { moreMoves, moreMovesWords } from "#lib/fit/more-moves.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { bothSides, exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";

/** 60 s opening, 60 s closing, no change of set-up between the same moves, a grid of 5 s. */
const plan = (lengthSeconds: number, items: readonly PlanItem[], more: Partial<Plan> = {}): Plan =>
  examplePlan(items, { lengthSeconds, ...more });
/** Nothing is told, so that no change takes time. */
const item = (id: string, seconds: number, more: Partial<MoveItem> = {}) =>
  exampleMove(id, { seconds, script: [], ...more });

function helps(p: Plan): FitHelp[] {
  const fit = fitToLength(p);
  if (fit.possible) throw new Error("it fits");
  return whatHelps(p, fit);
}
const of = (p: Plan, by: FitHelp["by"]) => helps(p).filter((help) => help.by === by);

describe("what would help", () => {
  it("is one lock less where one is enough", () => {
    // 120 + 60 + 60 + 60 = 300 of 280: only the locked ones are left, and any of them can give 20 s.
    const p = plan(280, [
      item("a", 60, { locked: true }),
      item("b", 60, { locked: true }),
      item("c", 60, { range: [60, 60] }),
    ]);
    expect(of(p, "unlock")).toEqual([
      { by: "unlock", items: ["a"] },
      { by: "unlock", items: ["b"] },
    ]);
  });

  it("is all locks where no single one is enough, and none where not even all are", () => {
    const items = [item("a", 60, { locked: true }), item("b", 60, { locked: true })];
    expect(of(plan(200, items), "unlock")).toEqual([{ by: "unlock", items: ["a", "b"] }]);
    expect(of(plan(150, items), "unlock")).toEqual([]);
  });

  it("is both locks of a pair, since they share their time", () => {
    // 120 + 45 + 45 and 5 s to change hands, 215 of 205: 40 s each.
    const lock: Partial<MoveItem> = { locked: true };
    expect(of(plan(205, bothSides("row", lock, lock)), "unlock")).toEqual([
      { by: "unlock", items: ["row-left", "row-right"] },
    ]);
  });

  it("is more moves before anything else, where not even the longest times fill the class", () => {
    // 120 + 60 = 180 of 600, and 70 s at the longest: 420 s are seven moves of 60 s.
    const p = plan(600, [item("a", 60, { range: [50, 70] })]);
    expect(helps(p)[0]).toEqual({ by: "moves", count: 7 });
    // Of 205 only 25 s are missing, and of 150 none are.
    expect(of(plan(205, [item("a", 60, { range: [50, 70] })]), "moves")).toEqual([]);
    expect(of(plan(150, [item("a", 60, { range: [50, 70] })]), "moves")).toEqual([]);
  });

  it("counts them by the usual move and the usual change of the plan, and offers no range to stretch over them", () => {
    const list = Array.from({ length: 10 }, (_, i) =>
      item(`i${i}`, 45, { range: [30, 60], ...(i > 0 ? { transitionSeconds: 10 } : {}) }),
    );
    // 120 + 10 x 45 + 9 x 10 = 660 of 1260; one long hold does not count as usual.
    const p = plan(1260, list);
    expect(helps(p).map(({ by }) => by)).toEqual(["moves", "length"]);
    expect(of(p, "moves")).toEqual([{ by: "moves", count: 11 }]);
    const oneLong = list.map((it, i) =>
      i === 4 ? { ...it, seconds: 180, range: [150, 200] as [number, number] } : it,
    );
    expect(of({ ...p, items: oneLong, lengthSeconds: 1395 }, "moves")).toEqual([{ by: "moves", count: 11 }]);
    expect([1, 2, 11, 20, 21].map(moreMovesWords)).toEqual([
      "about one more move",
      "about two more moves",
      "about eleven more moves",
      "about twenty more moves",
      "about 21 more moves",
    ]);
  });

  it("is no move where the fit can fill the class", () => {
    // 120 + 45 = 165 of 184: 60 s and the 4 s that the closing takes up.
    const p = plan(184, [item("a", 45, { range: [30, 60] })]);
    expect(fitToLength(p).possible).toBe(true);
    expect(moreMoves(p, classClock(p))).toBe(0);
    expect(moreMoves(plan(900, []), classClock(plan(900, [])))).toBe(0);
  });

  it("is a range as much wider as the class lacks", () => {
    // 120 + 50 + 50 at the shortest = 220 of 200.
    const p = plan(200, [item("a", 60, { range: [50, 70] }), item("b", 80, { range: [50, 90] })]);
    expect(of(p, "range")).toEqual([
      { by: "range", items: ["b"], from: [50, 90], to: [30, 90] },
      { by: "range", items: ["a"], from: [50, 70], to: [30, 70] },
    ]);
  });

  it("is a shorter opening or closing, or a longer one, never shorter than nothing or more than twice as long", () => {
    const items = [item("a", 60, { range: [60, 60] })];
    expect(of(plan(150, items), "opening")).toEqual([{ by: "opening", from: 60, to: 30 }]);
    expect(of(plan(150, items), "closing")).toEqual([{ by: "closing", from: 60, to: 30 }]);
    expect(of(plan(100, items), "opening")).toEqual([]);
    expect(of(plan(230, items), "opening")).toEqual([{ by: "opening", from: 60, to: 110 }]);
    expect(of(plan(600, items), "opening")).toEqual([]);
  });

  it("is the next whole minute where one is possible, else the nearest second", () => {
    const stiff = [item("a", 70, { range: [70, 70] })];
    expect(of(plan(100, stiff), "length")).toEqual([{ by: "length", from: 100, to: 190 }]);
    expect(of(plan(100, [item("a", 70, { range: [70, 200] })]), "length")).toEqual([
      { by: "length", from: 100, to: 240 },
    ]);
  });

  it("where only a pair may change and one step is over, is a length of one step more", () => {
    // 120 and 5 s to change hands leave 95 s: 47.5 each are no whole steps.
    const p = plan(220, bothSides("row", { range: [40, 60] }, { range: [40, 60] }));
    expect(of(p, "length")).toEqual([{ by: "length", from: 220, to: 225 }]);
  });

  it("whatever is offered works", () => {
    let offers = 0;
    const anyItem = fc.record({
      seconds: fc.integer({ min: 10, max: 120 }),
      locked: fc.boolean(),
      range: fc.tuple(fc.integer({ min: 5, max: 120 }), fc.integer({ min: 0, max: 40 })),
      side: fc.constantFrom("left" as const, "right" as const, "both" as const),
    });
    fc.assert(
      fc.property(
        fc.array(anyItem, { minLength: 1, maxLength: 6 }),
        fc.integer({ min: 60, max: 900 }),
        (list, length) => {
          const items = list.map(({ range: [low, more], ...rest }, i) =>
            item(`i${i}`, 0, { ...rest, range: [low, low + more] }),
          );
          const p = plan(length, items);
          const fit = fitToLength(p);
          if (fit.possible) return;
          for (const help of whatHelps(p, fit)) {
            offers++;
            if (help.by === "moves") expect(fit.longest).toBeLessThan(length);
            else expect(fitToLength(taken(p, help)).possible).toBe(true);
          }
        },
      ),
      { seed: 9_101, numRuns: 300 },
    );
    expect(offers).toBeGreaterThan(300);
  });
});

function taken(p: Plan, help: Exclude<FitHelp, { by: "moves" }>): Plan {
  const change = (ids: readonly string[], changes: Partial<MoveItem>): Plan => {
    const items = p.items.map((i) => (i.kind === "move" && ids.includes(i.id) ? { ...i, ...changes } : i));
    return { ...p, items };
  };
  switch (help.by) {
    case "unlock":
      return change(help.items, { locked: false });
    case "range":
      return change(help.items, { range: [help.to[0], help.to[1]] });
    case "length":
      return { ...p, lengthSeconds: help.to };
    default:
      return { ...p, [`${help.by}Seconds`]: help.to };
  }
}
