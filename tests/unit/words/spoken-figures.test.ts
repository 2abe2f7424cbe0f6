/** Figures that are heard, not seen: whole repetitions. */
import { expect, test } from "vitest";
import { repsWords } from "#lib/plan/format.ts";

test("repetitions are whole, and said to be about so many where a part is over", () => {
  expect([12, 1, 12.4, 0.98, 30 / 7].map(repsWords)).toEqual([
    "12 reps",
    "1 rep",
    "about 12 reps",
    "1 rep",
    "about 4 reps",
  ]);
});
