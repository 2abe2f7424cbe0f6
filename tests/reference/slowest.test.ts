/**
 * The expected largest of n standard normal values, against published tables, closed forms and an integration of another
 * formula than the one behind the table in `lib/transitions/slowest.ts`.
 */
import { describe, expect, it } from "vitest";
import { exampleEquipment } from "#lib/rules/define/example-plan.ts";
import { expectedLargest, MOST_PEOPLE, slowestFactor } from "#lib/transitions/slowest.ts";

/** D. Teichroew 1956 and H. L. Harter 1961, "Expected values of normal order statistics": five decimals. */
const PUBLISHED: readonly (readonly [number, number])[] = [
  [1, 0],
  [2, 0.56419],
  [5, 1.16296],
  [10, 1.53875],
  [20, 1.86748],
];

/** Of the same tables, from memory. */
const FROM_MEMORY: readonly (readonly [number, number])[] = [
  [3, 0.84628],
  [4, 1.02938],
  [6, 1.26721],
  [7, 1.35218],
  [8, 1.4236],
  [9, 1.48501],
  [15, 1.73591],
  [25, 1.96531],
  [30, 2.04276],
  [50, 2.24907],
];

/** Closed forms (H. L. Jones 1948, from memory). */
const EXACT: readonly (readonly [number, number])[] = [
  [2, 1 / Math.sqrt(Math.PI)],
  [3, 3 / (2 * Math.sqrt(Math.PI))],
  [4, (6 / Math.PI ** 1.5) * Math.atan(Math.SQRT2)],
  [5, 5 / (4 * Math.sqrt(Math.PI)) + (15 / (2 * Math.PI ** 1.5)) * Math.asin(1 / 3)],
];

/** The step of the rule, and how far out it goes: beyond 9 standard deviations 60 values leave less than 1e-16. */
const STEP = 1 / 64;
const FAR = 9;

/** The normal distribution function on the grid: the trapezium rule again, with an error of the order of 1e-16. */
function distribution(): number[] {
  const density = (x: number) => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
  const values = [0];
  for (let x = -FAR; x < FAR; x += STEP) {
    // Simpson's rule on each step.
    const part = (STEP / 6) * (density(x) + 4 * density(x + STEP / 2) + density(x + STEP));
    values.push((values.at(-1) ?? 0) + part);
  }
  return values;
}

/** E(max) is the integral of 1 - F^n over the positive numbers, less the integral of F^n over the negative ones. */
function integrated(n: number, cdf: readonly number[]): number {
  const middle = (cdf.length - 1) / 2;
  let sum = 0;
  for (const [at, f] of cdf.entries()) {
    const power = f ** n;
    if (at === middle) sum += (1 - power - power) / 2;
    else sum += at > middle ? 1 - power : -power;
  }
  return sum * STEP;
}

describe("the expected largest of n standard normal values", () => {
  it.each(PUBLISHED)("is the published one for %i", (n, value) => {
    expect(Math.abs(expectedLargest(n) - value)).toBeLessThanOrEqual(5.1e-6);
  });

  it.each(FROM_MEMORY)("is the remembered one for %i", (n, value) => {
    expect(Math.abs(expectedLargest(n) - value)).toBeLessThanOrEqual(5.1e-6);
  });

  it.each(EXACT)("is the exact one for %i", (n, value) => {
    expect(expectedLargest(n)).toBeCloseTo(value, 6);
  });

  it("is what integration finds, for every number of people a plan may have", () => {
    const cdf = distribution();
    for (let n = 1; n <= MOST_PEOPLE; n++) expect(expectedLargest(n), String(n)).toBeCloseTo(integrated(n, cdf), 5);
  });

  it("rises with every person, by less each time", () => {
    const steps = Array.from({ length: MOST_PEOPLE - 1 }, (_, n) => expectedLargest(n + 2) - expectedLargest(n + 1));
    for (const [n, step] of steps.entries()) {
      expect(step).toBeGreaterThan(0);
      if (n > 0) expect(step).toBeLessThan(steps[n - 1] ?? 0);
    }
  });
});

describe("the factor of a room", () => {
  it("is 1 for one person, and where nobody differs", () => {
    expect(slowestFactor({ equipment: exampleEquipment })).toBe(1);
    expect(slowestFactor({ people: 1, equipment: { ...exampleEquipment, spreadShare: 0.4 } })).toBe(1);
    expect(slowestFactor({ people: 12, equipment: { ...exampleEquipment, spreadShare: 0 } })).toBe(1);
  });

  it("copes with any number in a damaged plan", () => {
    for (const people of [0, -3, 2.4, 61, 1e9, Number.NaN, Number.POSITIVE_INFINITY])
      expect(slowestFactor({ people, equipment: exampleEquipment })).toBeGreaterThanOrEqual(1);
  });
});
