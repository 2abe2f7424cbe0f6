import { describe, expect, test } from "vitest";
import { halfAway } from "#lib/numbers/round.ts";

describe("half away from zero", () => {
  test.each([
    [0.25, 1, 0.3],
    [-0.25, 1, -0.3],
    [2.5, 0, 3],
    [-2.5, 0, -3],
    [0.24999, 1, 0.2],
    [0.12345, 4, 0.1235],
    // In binary a little under the half that it stands for.
    [1.00045, 4, 1.0005],
    [-0.04, 1, 0],
    [0, 4, 0],
    [1234567.05, 1, 1234567.1],
  ])("%d to %d decimals", (x, decimals, expected) => {
    expect(halfAway(x, decimals)).toBe(expected);
  });

  test("never -0", () => {
    expect(Object.is(halfAway(-0.01, 1), 0)).toBe(true);
  });
});
