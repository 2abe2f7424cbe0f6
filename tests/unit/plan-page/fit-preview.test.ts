/** What Fit to length shows: pairs together, what is kept and why, its words; and taking writes nothing but what changes. */
import { describe, expect, test } from "vitest";
import { closingWords, costWords, difference, heldWords, helpWords } from "#app/_fit/fit-words.ts";
import { changesAnything, fitPreview, rowsOf } from "#app/_fit/preview.ts";
import { againstLength } from "#lib/clock/length-words.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { bothSides, exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";

const plan = (lengthSeconds: number, items: readonly PlanItem[], more: Partial<Plan> = {}): Plan =>
  examplePlan(items, { lengthSeconds, ...more });
const item = (id: string, seconds: number, more: Partial<MoveItem> = {}) => exampleMove(id, { seconds, ...more });
const heading = (id: string): PlanItem => ({ id, kind: "heading", title: id });

describe("the rows", () => {
  const [left, right] = bothSides("row", { seconds: 45 }, { seconds: 60 }) as [MoveItem, MoveItem];
  const items = [item("a", 60), heading("one"), left, item("b", 60, { locked: true }), heading("two"), right];
  const preview = fitPreview(plan(400, items));

  test("stand block by block, both sides of a move where the first of them stands", () => {
    const shown = preview.blocks.map((block) => [block.title, block.groups.map((g) => g.rows.map((r) => r.id))]);
    expect(shown).toEqual([
      [null, [["a"]]],
      ["one", [["row-left", "row-right"], ["b"]]],
    ]);
  });

  test("give both sides the same, and say what is kept and why", () => {
    const to = Object.fromEntries(rowsOf(preview).map((row) => [row.id, row.to]));
    expect(to["row-left"]).toBe(to["row-right"]);
    expect(rowsOf(preview).map(heldWords)).toEqual(["", "", "", "kept"]);
    const kept = fitPreview(
      plan(400, [{ ...left, locked: true }, { ...right, range: [60, 90] }, item("a", 60, { range: [60, 300] })]),
    );
    expect(rowsOf(kept).map(heldWords)).toEqual(["kept", "same as its other side, outside its own 60 to 90 s", ""]);
    expect(rowsOf(kept).map((row) => [row.locked, row.follows])).toEqual([
      [true, false],
      [false, true],
      [false, false],
    ]);
  });
});

describe("the words", () => {
  test("of the whole, of the cost and of the closing", () => {
    const p = plan(213, [item("a", 60), item("b", 40, { move: "plank" })]);
    const preview = fitPreview({ ...p, items: p.items.map((i) => ({ ...i, transitionSeconds: 0 })) });
    expect(preview.before).toBe(220);
    expect(againstLength(220, 213)).toBe("of 3:33 · 7 s over");
    expect(againstLength(213, 213)).toBe("of 3:33 · to the second");
    // 90 s in whole steps of 5 s, 3 s to the closing.
    expect(costWords(p, preview)).toBe("All moves get a new time. Largest difference: Plank hold, 5 s shorter (13%).");
    expect(closingWords(preview)).toBe(
      "Moves keep to steps of 5 s and whole repetitions, so the closing takes the 3 s left over and is 63 s long.",
    );
    expect([difference(5), difference(-10), difference(0), difference(2.5)]).toEqual(["+5", "−10", "0", "+2.5"]);
  });

  test("say when there is nothing to change", () => {
    const p = plan(180, [item("a", 60)]);
    expect(changesAnything(fitPreview(p))).toBe(false);
    expect(changesAnything(fitPreview({ ...p, lengthSeconds: 182 })), "the closing alone").toBe(true);
    expect(changesAnything(fitPreview({ ...p, lengthSeconds: 60 })), "impossible").toBe(false);
  });

  test("of what would help name the items and their numbers", () => {
    const p = plan(150, [item("a", 60, { range: [60, 60] }), item("b", 45, { move: "plank", locked: true })]);
    expect(helpWords(p, { by: "unlock", items: ["b"] })).toBe("Let the time of Plank hold change.");
    expect(helpWords(p, { by: "range", items: ["a"], from: [60, 60], to: [30, 60] })).toBe(
      "Widen the range of Squat to 30 to 60 s; it is 60 s now.",
    );
    // Each end with its unit: "30 to 2 min 55 s" would read as half an hour.
    expect(helpWords(p, { by: "range", items: ["a"], from: [30, 60], to: [30, 175] })).toBe(
      "Widen the range of Squat to 30 s to 2 min 55 s; it is 30 to 60 s now.",
    );
    expect(helpWords(p, { by: "moves", count: 1 })).toBe("Add about one more move like those in the plan.");
    expect(helpWords(p, { by: "moves", count: 12 })).toBe("Add about twelve more moves like those in the plan.");
    expect(helpWords(p, { by: "opening", from: 60, to: 30 })).toBe("Make the opening shorter: 30 s instead of 60 s.");
    expect(helpWords(p, { by: "length", from: 150, to: 240 })).toBe("Make the class 4 min long; it is 2 min 30 s now.");
  });
});

describe("what the checks would find", () => {
  // 45 s are nine cycles of 5 s; with 2 s of a grid of 2 s more the tenth is begun and not ended.
  const items = [item("a", 45, { range: [30, 60] })];
  const fitted = (lengthSeconds: number) => fitPreview(plan(lengthSeconds, items, { gridSeconds: 1 }));

  test("with the new times and not with the old ones is told before they are taken", () => {
    const { fit, found } = fitted(60 + 48 + 60);
    expect(fit).toMatchObject({ possible: true, changed: [{ item: "a", from: 45, to: 48 }] });
    expect(found.map((f) => [f.rule, f.items])).toEqual([["partial-rep", ["a"]]]);
  });

  test("is nothing when whole repetitions stay whole, and when the fit is impossible", () => {
    expect(fitted(60 + 50 + 60).found).toEqual([]);
    expect(fitted(60 + 20 + 60)).toMatchObject({ fit: { possible: false }, found: [] });
  });
});
