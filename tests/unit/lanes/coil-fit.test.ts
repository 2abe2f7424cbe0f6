import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { COIL, fitCoils } from "#lib/lanes/coil-fit.ts";
import { textWidth } from "#lib/lanes/text-width.ts";

const spring = (id: string, count: number) => ({ id, label: id, count, stiffnessNPerMm: 0.1 });

describe("fitCoils", () => {
  test.each([
    [120, 26, 4, null],
    [60, 15, 4, null],
    [40, 13, 1, 4],
  ])("four light in %d px: coils of %d px", (width, coil, drawn, times) => {
    expect(fitCoils([spring("light", 4)], width)).toEqual({ coil, groups: [{ id: "light", drawn, times }] });
  });

  it("draws nothing in a width where nothing can be seen", () => {
    expect(fitCoils([spring("light", 4), spring("firm", 1)], 20)).toBeNull();
  });

  it("never draws beyond the width, and counts every spring", () => {
    const springs = fc.array(fc.integer({ min: 1, max: 20 }), { maxLength: 5 });
    fc.assert(
      fc.property(springs, fc.integer({ min: 0, max: 400 }), (counts, width) => {
        const fit = fitCoils(
          counts.map((n, i) => spring(String(i), n)),
          width,
        );
        if (fit === null) return;
        const drawn = fit.groups.map(
          ({ drawn, times }) => drawn * fit.coil + (times === null ? 0 : textWidth(`×${times}`, COIL.type)),
        );
        const gaps = Math.max(0, counts.length - 1) * COIL.gap;
        expect(drawn.reduce((sum, w) => sum + w, gaps)).toBeLessThanOrEqual(width);
        expect(fit.groups.map(({ drawn, times }) => times ?? drawn)).toEqual(counts);
      }),
    );
  });
});
