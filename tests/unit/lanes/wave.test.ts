import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { BreathCell } from "#lib/lanes/types.ts";
import { wavePaths } from "#lib/lanes/wave.ts";

const cell = (
  reps: number | null,
  cycle: BreathCell["cycle"],
  exhaleOn: BreathCell["exhaleOn"] = "out",
): BreathCell => ({
  key: "a",
  item: "a",
  name: "Row",
  first: 0,
  last: 0,
  from: 0,
  to: 60,
  say: "reps",
  reps,
  cycle,
  exhaleOn,
});
const points = (path: string) => [...path.matchAll(/[ML](\S+) ([\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);

describe("wavePaths", () => {
  it("rises while the carriage goes out and falls on the way back, in the tempo's own parts", () => {
    // 2 reps of 2 s out and 4 s back over 60 px: 5 px a second
    expect(points(wavePaths(cell(2, [2, 0, 4, 0]), { width: 60, height: 16 })?.line ?? "").map(([x]) => x)).toEqual([
      0, 10, 10, 30, 30, 40, 40, 60,
    ]);
  });

  it("draws breathing out on its half only", () => {
    const { exhale = "" } = wavePaths(cell(2, [2, 0, 4, 0], "back"), { width: 60, height: 16 }) ?? {};
    expect(points(exhale).map(([x]) => x)).toEqual([10, 30, 40, 60]);
    expect(wavePaths(cell(2, [2, 0, 4, 0], null), { width: 60, height: 16 })?.exhale).toBe("");
  });

  it("has no wave for a hold, or for more repetitions than can be seen", () => {
    expect(wavePaths(cell(null, null), { width: 60, height: 16 })).toBeNull();
    expect(wavePaths(cell(40, [1, 0, 1, 0]), { width: 60, height: 16 })).toBeNull();
  });

  it("stays within its size and ends where the time does", () => {
    const half = fc.integer({ min: 1, max: 8 }).map((n) => n / 2);
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 30, noNaN: true }),
        fc.tuple(half, half, half, half),
        fc.integer({ min: 20, max: 600 }),
        (reps, cycle, width) => {
          const waves = wavePaths(cell(reps, cycle), { width, height: 16 });
          if (waves === null) return;
          const all = points(waves.line);
          for (const [x = 0, y = 0] of all) {
            expect(x).toBeLessThanOrEqual(width + 0.05);
            expect(y).toBeGreaterThanOrEqual(0);
            expect(y).toBeLessThanOrEqual(16);
          }
          expect(all.at(-1)?.[0]).toBeCloseTo(width, 0);
        },
      ),
    );
  });
});
