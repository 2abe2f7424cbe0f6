import { expect, test } from "vitest";
import { PaceLimit } from "#server/limits/pace-limit.ts";

test("a burst at once, then one in so many ms", () => {
  const pace = new PaceLimit({ burst: 3, everyMs: 100, keys: 10 });
  expect([0, 0, 0].map((at) => pace.take("a", at))).toEqual([0, 0, 0]);
  expect(pace.take("a", 0)).toBe(100);
  expect(pace.take("a", 60)).toBe(40);
  // What was refused was not counted.
  expect(pace.take("a", 100)).toBe(0);
  expect(pace.take("a", 100)).toBe(100);
  expect([1000, 1000, 1000, 1000].map((at) => pace.take("a", at))).toEqual([0, 0, 0, 100]);
});

test("keys are counted apart, and no more of them are kept than were allowed", () => {
  const pace = new PaceLimit({ burst: 1, everyMs: 1000, keys: 2 });
  expect(["a", "b", "a", "b"].map((key) => pace.take(key, 0))).toEqual([0, 0, 1000, 1000]);
  expect(pace.take("c", 0)).toBe(0);
  // The oldest made room.
  expect(pace.take("a", 0)).toBe(0);
  expect(pace.take("c", 0)).toBe(1000);
});
