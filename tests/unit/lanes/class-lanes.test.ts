import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { classClock } from "#lib/clock/clock.ts";
import { keepSameLanes } from "#lib/lanes/class-lanes.ts";
import { OPENING_ID } from "#lib/lanes/columns.ts";
import type { ClassCell } from "#lib/lanes/types.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import { exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";
import { UPPER_BODY_AND_TRUNK } from "#seed/plans/upper-body-and-trunk.ts";
import { often } from "#tests/support/long.ts";
import { validPlan } from "#tests/support/plan-arbitrary.ts";
import { laneOf, lanesOf } from "./support.ts";

const anyPlan = fc.oneof({ weight: 9, arbitrary: validPlan }, fc.constant(UPPER_BODY_AND_TRUNK));

describe("the lanes of any plan", () => {
  it("have cells in order of time that never overlap, all within the class", () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { lanes, total } = lanesOf(plan);
        for (const lane of lanes) {
          let end = 0;
          for (const cell of lane.cells) {
            expect(cell.from).toBeGreaterThanOrEqual(end - 1e-9);
            expect(cell.to).toBeGreaterThanOrEqual(cell.from);
            end = cell.to;
          }
          expect(end).toBeLessThanOrEqual(total + 1e-9);
        }
      }),
      { numRuns: often(25, 150) },
    );
  });

  it("add up to the clock: columns and the changes between them are the whole class", () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { columns, total } = lanesOf(plan);
        const sum = columns.reduce((s, column) => s + (column.to - column.gapFrom), 0);
        expect(sum).toBeCloseTo(total, 6);
        expect(total).toBe(classClock(plan).total);
        for (const [i, column] of columns.entries()) expect(column.gapFrom).toBeCloseTo(columns[i - 1]?.to ?? 0, 6);
      }),
      { numRuns: often(25, 150) },
    );
  });

  it("have words in every cell, and each key once per lane", () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        for (const lane of lanesOf(plan).lanes) {
          const keys = lane.cells.map((cell: ClassCell) => cell.key);
          expect(new Set(keys).size).toBe(keys.length);
          for (const cell of lane.cells) expect(cell.say).not.toBe("");
        }
      }),
      { numRuns: often(15, 60) },
    );
  });

  it("draw every second of springs once, and mark every change of springs", () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const springs = lanesOf(plan).lanes.find((lane) => lane.kind === "springs");
        if (springs?.kind !== "springs") return;
        for (const [i, run] of springs.runs.entries()) {
          expect(run.from).toBeGreaterThanOrEqual((springs.runs[i - 1]?.to ?? 0) - 1e-9);
          expect(run.to).toBeGreaterThanOrEqual(run.from);
        }
        const changes = classClock(plan).rows.filter((row) => (row.transition.actions.carriageHome ?? 0) > 0);
        expect(springs.turns).toHaveLength(changes.length);
      }),
      { numRuns: often(20, 100) },
    );
  });
});

/*
 * opening 60 | heading Arms | row left 60 | (change) | row right 45 | pause 20 | (change) press 50 on 2 light | closing 60
 */
const items: PlanItem[] = [
  { id: "h0", kind: "heading", title: "Nothing under it" },
  { id: "h1", kind: "heading", title: "Arms" },
  exampleMove("a", { move: "row", side: "left", seconds: 60 }),
  exampleMove("b", {
    move: "row",
    side: "right",
    seconds: 45,
    transitionSeconds: 6,
    script: [{ kind: "crew", text: "wide" }],
  }),
  { id: "p", kind: "pause", seconds: 20, text: "Drink" },
  { id: "h2", kind: "heading", title: "Press" },
  exampleMove("c", { move: "press", seconds: 50, springs: { light: 2 }, transitionSeconds: 10 }),
];
const plan: Plan = { ...examplePlan(items), openingSeconds: 60, closingSeconds: 60 };

describe("the lanes of a small class", () => {
  const { lanes, columns } = lanesOf(plan);

  it("have one column for everything that takes time", () => {
    expect(columns.map(({ key, from, to, number }) => [key, from, to, number])).toEqual([
      [OPENING_ID, 0, 60, 0],
      ["a", 60, 120, 1],
      ["b", 126, 171, 2],
      ["p", 171, 191, 0],
      ["c", 201, 251, 3],
      [":closing", 251, 311, 0],
    ]);
  });

  it("put a heading over its items, and name an empty one together with the next", () => {
    expect(
      laneOf(lanes, "headings").cells.map(({ name, first, last, from, to }) => [name, first, last, from, to]),
    ).toEqual([
      ["the heading Nothing under it · the heading Arms", 1, 3, 60, 191],
      ["the heading Press", 4, 4, 191, 251],
    ]);
  });

  it("join equal springs of neighbouring moves, also across a pause, and mark the change", () => {
    const springs = laneOf(lanes, "springs");
    expect(springs.runs.map((run) => [run.from, run.to])).toEqual([
      [60, 171],
      [201, 251],
    ]);
    expect(springs.turns).toEqual([{ key: "c", from: 191, to: 201, words: expect.stringMatching(/^[+−]\d/) }]);
  });

  it("say sides, muscles and the crew's lines", () => {
    expect(laneOf(lanes, "work").cells.map((cell) => cell.side)).toEqual([
      "both",
      "left",
      "right",
      "both",
      "both",
      "both",
    ]);
    const muscles = lanes.filter((lane) => lane.kind === "muscle").map((lane) => [lane.name, lane.cells.length]);
    expect(muscles).toContainEqual(["upper back", 2]);
    expect(laneOf(lanes, "crew").cells.map(({ key, text }) => [key, text])).toEqual([["b", "wide"]]);
  });

  it("mark what concerns the whole class over the opening", () => {
    const thread = { id: "t", settled: false, leadSpoke: false, comments: [], anchor: { kind: "plan" } } as const;
    const onItem = {
      id: "u",
      settled: false,
      leadSpoke: false,
      comments: [],
      anchor: { kind: "item", itemId: "b" },
    } as const;
    const settled = { ...onItem, id: "v", settled: true };
    const cells = laneOf(lanesOf(plan, [thread, onItem, settled]).lanes, "threads").cells;
    expect(cells.map(({ key, threads }) => [key, threads])).toEqual([
      [OPENING_ID, 1],
      ["b", 1],
    ]);
  });
});

describe("keepSameLanes", () => {
  it("returns the same object for an unchanged lane", () => {
    const before = lanesOf(plan);
    const written = items.map((item) =>
      item.id === "b" ? { ...item, script: [{ kind: "form" as const, text: "Long neck." }] } : item,
    );
    const after = keepSameLanes(lanesOf({ ...plan, items: written }), before);
    const changed = after.lanes.filter((lane) => !before.lanes.includes(lane)).map((lane) => lane.kind);
    expect(changed).not.toContain("springs");
    expect(changed).not.toContain("muscle");
    expect(changed).toContain("talk");
  });
});

it("an item named like a property of every object has no muscles", () => {
  const moves = { ...exampleMoves };
  const odd = { ...examplePlan([exampleMove("constructor", { move: "row", seconds: 60 })]), moves };
  expect(laneOf(lanesOf(odd).lanes, "work").cells.map((cell) => cell.key)).toContain("constructor");
});

it("marks what is found about a heading at the first item under it that takes time", () => {
  const blocks = [
    { id: "h", kind: "heading" as const, title: "Legs and back" },
    { id: "p", kind: "pause" as const, seconds: 10 },
    exampleMove("a", { springs: { heavy: 1 } }),
    exampleMove("b", { move: "press", springs: { light: 3 } }),
    exampleMove("c", { springs: { heavy: 1 } }),
    exampleMove("d", { move: "press", springs: { light: 3 } }),
  ];
  const cells = laneOf(lanesOf(examplePlan(blocks)).lanes, "found").cells;
  expect(cells.find(({ item }) => item === "p")).toMatchObject({ must: 0, look: 0, info: 1 });
});
