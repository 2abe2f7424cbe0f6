import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { axisOf, boxOf, fitScale, scaleForTargets, ZOOM_STEPS, zoomed } from "#lib/lanes/axis.ts";

describe("axisOf", () => {
  test.each([
    [1500, 0.6, ["0", "2", "4"]], // 60 s are 36 px: too near for a label
    [1500, 1, ["0", "1", "2"]],
    [1500, 3, ["0", "0:15", "0:30"]],
    [14_400, 0.05, ["0", "15", "30"]],
  ])("%d s at %d px a second begins %j", (total, scale, first) => {
    expect(
      axisOf({ total, lengthSeconds: total, scale })
        .ticks.slice(0, 3)
        .map((tick) => tick.label),
    ).toEqual(first);
  });

  it("reaches to the end of the class or of its slot, whichever is later, with labels neither beyond it nor too close", () => {
    fc.assert(
      fc.property(
        fc.nat(14_400),
        fc.integer({ min: 60, max: 14_400 }),
        fc.double({ min: 0.02, max: 5, noNaN: true }),
        (total, lengthSeconds, scale) => {
          const axis = axisOf({ total, lengthSeconds, scale });
          expect(axis.seconds).toBe(Math.max(total, lengthSeconds));
          for (const [i, tick] of axis.ticks.entries()) {
            expect(tick.x).toBeLessThanOrEqual(axis.width + 1e-6);
            if (i > 0)
              expect(tick.x - (axis.ticks[i - 1]?.x ?? 0)).toBeGreaterThanOrEqual(Math.min(40, 3600 * scale) - 1e-6);
          }
        },
      ),
    );
  });
});

describe("boxOf", () => {
  it("draws separate stretches of time without overlap and within the axis", () => {
    const stretches = fc.array(fc.tuple(fc.nat(300), fc.nat(300)), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(stretches, fc.double({ min: 0.02, max: 5, noNaN: true }), (steps, scale) => {
        let now = 0;
        const spans = steps.map(([gap, length]) => {
          const from = now + gap;
          now = from + length;
          return { from, to: now };
        });
        const axis = axisOf({ total: now, lengthSeconds: 60, scale });
        let end = 0;
        for (const span of spans) {
          const box = boxOf(axis, span);
          expect(box.x).toBeGreaterThanOrEqual(end - 1e-6);
          expect(box.width).toBeGreaterThanOrEqual(0);
          end = box.x + box.width;
        }
        expect(end).toBeLessThanOrEqual(axis.width + 1e-6);
      }),
    );
  });
});

describe("zoom", () => {
  it("fits the whole class into the given width", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 14_400 }), fc.integer({ min: 200, max: 3000 }), (seconds, width) => {
        expect(fitScale(seconds, width) * seconds).toBeLessThanOrEqual(width + 1e-6);
      }),
    );
  });

  it("goes up and down the same steps and stops at both ends", () => {
    const fit = 0.7;
    const up: (number | "fit")[] = ["fit"];
    for (let i = 0; i < 12; i++) up.push(zoomed(up.at(-1) ?? "fit", fit, 1));
    expect([...new Set(up)]).toEqual(["fit", ...ZOOM_STEPS.filter((step) => step > fit)]);
    const down: (number | "fit")[] = [ZOOM_STEPS.at(-1) ?? 1];
    for (let i = 0; i < 12; i++) down.push(zoomed(down.at(-1) ?? "fit", fit, -1));
    expect([...new Set(down)]).toEqual([...new Set(up)].reverse());
  });

  test.each([
    [[60, 60, 60], 44, 0.2, 0.9],
    [[60, 60, 60], 44, 0.8, "fit"],
    [[], 44, 0.2, "fit"],
  ] as const)("items of %j s reach %d px from %d px a second at %s", (seconds, px, fit, scale) => {
    expect(scaleForTargets(seconds, px, fit)).toBe(scale);
  });
});
