import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  LEAST_HEIGHT_PX,
  layoutRail,
  MOST_HEIGHT_PX,
  notchOffset,
  type RailInput,
  type RailItem,
  segmentOf,
  yOfSecond,
} from "#lib/rail/layout.ts";

/** Opening 60 s, plank 60 s, heading, 12 s change, row 40 s, pause 30 s, closing 60 s: 262 s, worked by hand. */
const items: RailItem[] = [
  { id: "plank", kind: "move", transitionFrom: 60, start: 60, end: 120 },
  { id: "pulls", kind: "heading", transitionFrom: 120, start: 120, end: 120 },
  { id: "row", kind: "move", transitionFrom: 120, start: 132, end: 172 },
  { id: "sip", kind: "pause", transitionFrom: 172, start: 172, end: 202 },
];
const input: RailInput = { items, lengthSeconds: 300, total: 262, scale: 1, needs: {} };

describe("layoutRail", () => {
  test("lays out a class worked by hand", () => {
    const layout = layoutRail(input);
    const shown = layout.segments.map((s) => [s.key, s.top, s.height]);
    expect(shown).toEqual([
      ["opening", 0, 20],
      ["plank", 20, 60],
      ["pulls", 80, 34],
      ["gap:row", 114, 12],
      ["row", 126, 44],
      ["sip", 170, 44],
      ["closing", 214, 20],
      ["free", 234, 38],
    ]);
    expect(layout.height).toBe(272);
    expect(layout.lengthY).toBe(272);
  });

  test("gives text the height it needs", () => {
    const layout = layoutRail({ ...input, needs: { row: 90, "gap:row": 20 } });
    expect(segmentOf(layout, "row")?.height).toBe(90);
    expect(segmentOf(layout, "gap:row")?.height).toBe(20);
  });

  test("shows where a class that is too long should have ended", () => {
    const layout = layoutRail({ ...input, lengthSeconds: 152 });
    expect(layout.segments.some((s) => s.kind === "free")).toBe(false);
    // half of the row's 40 s, which is drawn 44 px tall
    expect(layout.lengthY).toBe(126 + 22);
  });

  test("an empty plan has its opening, its closing and free time", () => {
    const layout = layoutRail({ items: [], lengthSeconds: 1500, total: 120, scale: 0.1, needs: {} });
    expect(layout.segments.map((s) => s.key)).toEqual(["opening", "free"]);
    expect(layout.segments[1]?.height).toBe(MOST_HEIGHT_PX.free);
  });

  test("puts the heads-up where it is called", () => {
    const plank = segmentOf(layoutRail(input), "plank");
    if (!plank) throw new Error("no plank");
    expect(notchOffset(plank, 15)).toBe(45);
    expect(notchOffset(plank, 60)).toBeNull();
    expect(notchOffset(plank, 0)).toBeNull();
  });
});

const seconds = fc.integer({ min: 0, max: 240 });
const anyItem = fc.record({
  kind: fc.constantFrom("move" as const, "pause" as const, "heading" as const),
  seconds,
  change: fc.integer({ min: 0, max: 40 }),
});
const anyInput = fc
  .record({
    list: fc.array(anyItem, { maxLength: 30 }),
    opening: seconds,
    closing: seconds,
    lengthSeconds: fc.integer({ min: 60, max: 5000 }),
    scale: fc.double({ min: 0.2, max: 6, noNaN: true }),
    need: fc.integer({ min: 0, max: 200 }),
  })
  .map(({ list, opening, closing, lengthSeconds, scale, need }): RailInput => {
    let at = opening;
    let moves = 0;
    const items = list.map(({ kind, seconds: work, change }, i): RailItem => {
      const transitionFrom = at;
      const start = kind === "move" && moves++ > 0 ? at + change : at;
      at = kind === "heading" ? start : start + work;
      return { id: `i${i}`, kind, transitionFrom, start, end: at };
    });
    return { items, lengthSeconds, total: at + closing, scale, needs: { i0: need, "gap:i1": need } };
  });

describe("layoutRail, for any class", () => {
  test("segments follow each other, none smaller than its time or its text", () => {
    fc.assert(
      fc.property(anyInput, (any) => {
        const layout = layoutRail(any);
        let foot = 0;
        for (const s of layout.segments) {
          expect(s.top).toBeCloseTo(foot, 6);
          foot = s.top + s.height;
          expect(s.height).toBeGreaterThanOrEqual(Math.max(LEAST_HEIGHT_PX[s.kind], any.needs[s.key] ?? 0));
          const most = MOST_HEIGHT_PX[s.kind] ?? Number.POSITIVE_INFINITY;
          expect(s.height).toBeGreaterThanOrEqual(Math.min(most, (s.to - s.from) * any.scale) - 1e-9);
        }
        expect(layout.height).toBeCloseTo(foot, 6);
      }),
    );
  });

  test("time never runs upwards and stays on the rail", () => {
    fc.assert(
      fc.property(anyInput, (any) => {
        const layout = layoutRail(any);
        let last = 0;
        for (let t = 0; t <= any.total + 10; t += 7) {
          const y = yOfSecond(layout, t);
          expect(y).toBeGreaterThanOrEqual(last - 1e-9);
          expect(y).toBeLessThanOrEqual(layout.height + 1e-9);
          last = y;
        }
      }),
    );
  });
});
