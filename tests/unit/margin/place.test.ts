import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { placeSlips, type SlipWish } from "#lib/margin/place.ts";

const wish = (id: string, at: number, height = 40): SlipWish => ({ id, at, height });

const wishes = fc
  .array(
    fc.record({
      at: fc.integer({ min: -200, max: 3000 }),
      height: fc.integer({ min: 0, max: 400 }),
      weight: fc.constantFrom(1, 1, 3, 1000),
    }),
    {
      maxLength: 25,
    },
  )
  .map((list) => list.sort((a, b) => a.at - b.at).map((w, i) => ({ id: `s${i}`, ...w })));

describe("slips in the margin", () => {
  it("go where they wish when nothing is in the way", () => {
    expect(placeSlips([wish("a", 10), wish("b", 100), wish("c", 300)], 8).map((p) => p.top)).toEqual([10, 100, 300]);
  });
  it("share the distance when two wish for the same height", () => {
    expect(placeSlips([wish("a", 100), wish("b", 100)], 10).map((p) => p.top)).toEqual([75, 125]);
  });
  it("are held at the upper edge and pushed down from there", () => {
    expect(placeSlips([wish("a", 0), wish("b", 0), wish("c", 5)], 10).map((p) => p.top)).toEqual([0, 50, 100]);
  });
  it("leave a distant slip alone when a cluster of others shifts", () => {
    const places = placeSlips([wish("a", 100), wish("b", 100), wish("c", 100), wish("d", 900)], 10);
    expect(places.map((p) => p.top)).toEqual([50, 100, 150, 900]);
  });
  it("keep a heavier slip where it wishes while the others make room", () => {
    const places = placeSlips([wish("a", 100), { ...wish("b", 100), weight: 1e6 }, wish("c", 100)], 10);
    expect(places.map((p) => Math.round(p.top))).toEqual([50, 100, 150]);
    const late = placeSlips([wish("a", 100), wish("b", 100), { ...wish("c", 100), weight: 1e6 }], 10);
    expect(late.map((p) => Math.round(p.top))).toEqual([0, 50, 100]);
  });
  it("return nothing for no slips", () => {
    expect(placeSlips([], 8)).toEqual([]);
  });

  it("never cover each other, keep their order and stay below the edge, whatever is wished", () => {
    fc.assert(
      fc.property(wishes, fc.integer({ min: 0, max: 30 }), (list, gap) => {
        const places = placeSlips(list, gap);
        expect(places.map((p) => p.id)).toEqual(list.map((w) => w.id));
        places.forEach((place, i) => {
          expect(place.top).toBeGreaterThanOrEqual(-1e-9);
          const before = places[i - 1];
          const height = list[i - 1]?.height ?? 0;
          if (before) expect(place.top).toBeGreaterThanOrEqual(before.top + height + gap - 1e-6);
        });
      }),
      { seed: 7, numRuns: 400 },
    );
  });

  it("move no more than in any other arrangement", () => {
    const cost = (list: readonly SlipWish[], tops: readonly number[]) =>
      list.reduce((sum, w, i) => sum + (w.weight ?? 1) * ((tops[i] ?? 0) - w.at) ** 2, 0);
    fc.assert(
      fc.property(wishes, fc.array(fc.integer({ min: -300, max: 3300 }), { maxLength: 25 }), (list, guesses) => {
        const best = cost(
          list,
          placeSlips(list, 8).map((p) => p.top),
        );
        let floor = 0;
        const other = list.map((w, i) => {
          const top = Math.max(floor, guesses[i] ?? w.at);
          floor = top + w.height + 8;
          return top;
        });
        expect(best).toBeLessThanOrEqual(cost(list, other) + 1e-6);
      }),
      { seed: 11, numRuns: 400 },
    );
  });

  it("agree with a search through every whole pixel for a few small slips", () => {
    const list = [wish("a", 3, 2), wish("b", 3, 2), wish("c", 4, 2)];
    let best = Number.POSITIVE_INFINITY;
    for (let a = 0; a <= 12; a++)
      for (let b = a + 2; b <= 12; b++)
        for (let c = b + 2; c <= 12; c++) best = Math.min(best, (a - 3) ** 2 + (b - 3) ** 2 + (c - 4) ** 2);
    const places = placeSlips(list, 0).map((p) => p.top);
    const found = places.reduce((sum, top, i) => sum + (top - (list[i]?.at ?? 0)) ** 2, 0);
    expect(found).toBeLessThanOrEqual(best);
    expect(best - found).toBeLessThan(3);
  });
});
