import { describe, expect, it } from "vitest";
import { type CellSpot, cellAt, type WalkKey, walk } from "#lib/lanes/walk.ts";
import { FIRST_TRY } from "#seed/plans/first-try.ts";
import { lanesOf } from "./support.ts";

const { lanes } = lanesOf(FIRST_TRY);
const KEYS: readonly WalkKey[] = ["left", "right", "up", "down", "home", "end", "top", "bottom"];

describe("walk", () => {
  it("reaches every cell by arrow keys alone, starting from the first", () => {
    const start = walk(lanes, null, "home");
    if (!start) throw new Error("no cell");
    const seen = new Set<string>();
    const open: CellSpot[] = [start];
    for (let spot = open.pop(); spot; spot = open.pop()) {
      const name = `${spot.lane}/${spot.cell}`;
      if (seen.has(name)) continue;
      seen.add(name);
      for (const key of ["left", "right", "up", "down"] as const) {
        const next = walk(lanes, spot, key);
        if (next) open.push(next);
      }
    }
    const all = lanes.flatMap((lane) => lane.cells.map((cell) => `${lane.id}/${cell.key}`));
    expect([...seen].sort()).toEqual(all.sort());
  });

  it("always leads to a cell, and stays at the edges", () => {
    const first = walk(lanes, null, "home");
    for (const key of KEYS) expect(cellAt(lanes, walk(lanes, first, key))).not.toBeNull();
    expect(walk(lanes, walk(lanes, first, "end"), "right")).toEqual(walk(lanes, first, "end"));
    expect(walk([], null, "down")).toBeNull();
  });

  it("skips a lane without a cell at this item and stays on the item", () => {
    const work = lanes.find((lane) => lane.kind === "work");
    for (const cell of work?.cells ?? []) {
      const next = walk(lanes, { lane: "work", cell: cell.key }, "down");
      const there = cellAt(lanes, next);
      expect(there && there.cell.first <= cell.first && cell.first <= there.cell.last).toBe(true);
    }
  });

  it("finds its item again in the work lane when the cell is gone", () => {
    const [, item] = lanes.find((lane) => lane.kind === "work")?.cells ?? [];
    expect(cellAt(lanes, { lane: "no such lane", cell: item?.key ?? "" })?.cell).toBe(item);
  });
});
