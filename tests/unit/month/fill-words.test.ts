/** What is said of a fill is what its reader has left of it: nothing is claimed best once a plan was turned down. */
import { expect, it } from "vitest";
import { meanLikeness, outcomeWords } from "#app/_month/fill-words.ts";
import { MonthAnalyst } from "#lib/month/check/analyst.ts";
import { marchMonth } from "#tests/support/tide-month.ts";

const of = { proven: true, leftOut: 0, before: 20, after: 12, alike: 0.412 };

it("says how many findings are left, and how alike classes are", () => {
  expect(outcomeWords(of).join("")).toBe(
    "Proven best: other plans come out no better. Findings left: 12 instead of 20. Classes in a row are 41% alike on average.",
  );
  expect(outcomeWords({ ...of, proven: false, alike: null }).join("")).toBe(
    "Best found: other plans may come out better. Findings left: 12 instead of 20.",
  );
});

it("claims nothing of the whole once a plan was turned down", () => {
  expect(outcomeWords({ ...of, leftOut: 1, after: 13 }).join("")).toBe(
    "Without 1 plan you turned down: others may now be better. Findings left: 13 instead of 20. Classes in a row are 41% alike on average.",
  );
});

it("takes the mean over all pairs of classes in a row whose plans are known", () => {
  const { sums } = new MonthAnalyst().look(marchMonth());
  const pairs = Object.values(sums.regulars).flatMap(({ neighbours }) => neighbours);
  const known = pairs.filter(({ likeness }) => likeness !== null);
  expect(known.length).toBeGreaterThan(5);
  expect((meanLikeness(sums) ?? 0) * known.length).toBeCloseTo(
    known.reduce((sum, { likeness }) => sum + (likeness ?? 0), 0),
    9,
  );
  expect(meanLikeness({ ...sums, regulars: {} })).toBeNull();
});
