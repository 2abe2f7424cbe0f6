/** Percentages: to the nearest, as arithmetic rounds; the whole is the whole; what is compared never reads the same. */
import { expect, test } from "vitest";
import { groupShare, percent, percentOf, percentRange, percentsApart, signedPercent } from "#lib/formats/percent.ts";

test("the nearest whole hundredth, and 100% for the whole alone", () => {
  expect([0.779, 0.774, 0.5, 0.285, 0.29, 0].map(percent)).toEqual(["78%", "77%", "50%", "29%", "29%", "0%"]);
  expect([0.999, 1, 1 - 1e-12, 1.001, 1.004, 1.2].map(percent)).toEqual([
    "99%",
    "100%",
    "100%",
    "101%",
    "101%",
    "120%",
  ]);
});

test("two shares that differ are told apart, with no more decimals than that takes", () => {
  expect(percentOf(0.246, 0.25)).toBe("24.6% of 25%");
  expect(percentOf(0.2, 0.25)).toBe("20% of 25%");
  expect(percentOf(0.2499, 0.25)).toBe("24.99% of 25%");
  expect(percentsApart([0.6, 0.6])).toEqual(["60%", "60%"]);
  expect(percentsApart([])).toEqual([]);
});

test("changes, ranges and a group's share", () => {
  expect([0.104, -0.126, 0.001].map(signedPercent)).toEqual(["+10%", "−13%", "±0%"]);
  expect(percentRange(0.36, 0.399)).toBe("36 to 40%");
  expect([0.2345, 0.004, 0].map(groupShare)).toEqual(["23.5%", "under 1%", "0%"]);
});
