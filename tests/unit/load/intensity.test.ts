/** Laws of the intensity: the arc is the whole class, and its parts add up, on any plan. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { classClock } from "#lib/clock/clock.ts";
import { classIntensity } from "#lib/intensity/intensity.ts";
import { damagedPlan, validPlan } from "#tests/support/plan-arbitrary.ts";

describe("intensity", () => {
  it("covers the class from its first word to its last, and every second is counted once", () => {
    fc.assert(
      fc.property(validPlan, (plan) => {
        const { arc, seconds, unknown } = classIntensity(plan);
        const { total } = classClock(plan);
        arc.forEach((part, i) => {
          expect(part.from).toBe(arc[i - 1]?.to ?? 0);
        });
        expect(arc.at(-1)?.to ?? 0).toBe(total);
        const counted = Object.values(seconds).reduce((a, b) => a + b, 0) + unknown.seconds;
        expect(counted).toBeCloseTo(total, 6);
      }),
    );
  });
  it("never throws", () => {
    fc.assert(fc.property(damagedPlan, (plan) => void classIntensity(plan)));
  });
});
