import { describe, expect, test } from "vitest";
import { draggedSeconds, dropAfter, freeSpot, steppedSeconds } from "#lib/rail/drag.ts";
import { layoutRail } from "#lib/rail/layout.ts";

const end = { seconds: 60, scale: 2, grid: 5, shortest: 5, longest: 300 };

describe("draggedSeconds", () => {
  test.each([
    [0, 60],
    [4, 60], // 2 s: less than half a step
    [6, 65], // 3 s
    [-20, 50],
    [-1000, 5],
    [10_000, 300],
  ])("%d px down is %d s", (dy, seconds) => {
    expect(draggedSeconds({ ...end, dy })).toBe(seconds);
  });

  test("a time off the grid stays until it is moved, then goes to the grid", () => {
    expect(draggedSeconds({ ...end, seconds: 47, dy: 1 })).toBe(47);
    expect(draggedSeconds({ ...end, seconds: 47, dy: 10 })).toBe(50);
  });
});

describe("steppedSeconds", () => {
  test.each([
    [60, 1, 65],
    [60, -1, 55],
    [47, 1, 50],
    [47, -1, 45],
    [5, -1, 5],
  ] as const)("%d s by %d is %d s", (from, by, to) => {
    expect(steppedSeconds(from, by, 5)).toBe(to);
  });
});

describe("dropAfter", () => {
  const layout = layoutRail({
    items: [
      { id: "a", kind: "move", transitionFrom: 60, start: 60, end: 120 },
      { id: "b", kind: "move", transitionFrom: 120, start: 126, end: 186 },
      { id: "c", kind: "move", transitionFrom: 186, start: 192, end: 252 },
    ],
    lengthSeconds: 312,
    total: 312,
    scale: 1,
    needs: {},
  });

  test("an item that is not moved stays where it is", () => {
    expect(dropAfter(layout, "b", 156)).toBe("a");
  });
  test("above everything is the top, below everything the end", () => {
    expect(dropAfter(layout, "b", 10)).toBeNull();
    expect(dropAfter(layout, "b", 900)).toBe("c");
    expect(dropAfter(layout, "c", 900)).toBe("b");
  });
});

describe("freeSpot", () => {
  const label = (top: number, seconds: number) => ({ top, height: 20, seconds });
  const taken = [label(100, 60), label(180, 120)];
  test("stays where it is wanted when the place is free", () => {
    expect(freeSpot(label(50, 30), taken)).toBe(50);
    expect(freeSpot(label(140, 90), taken)).toBe(140);
  });
  test("avoids other labels and keeps the order of time", () => {
    expect(freeSpot(label(105, 90), taken)).toBe(120);
    expect(freeSpot(label(175, 90), taken)).toBe(160);
    expect(freeSpot(label(90, 30), taken)).toBe(80);
  });
  test("the end of the class never stands above the beginning of a short closing", () => {
    // A closing of 5 s is drawn 28 px tall: its own label fills most of it.
    expect(freeSpot(label(188, 1500), [label(180, 1495)])).toBe(200);
  });
});
