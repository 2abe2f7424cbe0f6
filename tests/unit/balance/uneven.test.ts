import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { balance } from "#lib/balance/balance.ts";
import { groupBars, isLopsided, unevenGroups } from "#lib/balance/uneven.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";
import { validPlan } from "#tests/support/plan-arbitrary.ts";

/*
 * row   left 60 and right 40: upper-back 60 against 40, biceps at 0.5: 30 against 20
 * press both 50: chest 25 against 25, triceps 12.5 against 12.5
 */
const plan: Plan = {
  ...examplePlan([
    exampleMove("a", { move: "row", side: "left", seconds: 60 }),
    exampleMove("b", { move: "row", side: "right", seconds: 40 }),
    exampleMove("c", { move: "press", seconds: 50 }),
  ]),
  theme: { name: "Back", shares: { "upper-back": 0.6, glutes: 0.1, chest: 0 } },
};

describe("groupBars", () => {
  const bars = groupBars(plan, balance(plan));

  it("have the most trained first, equals in the library's order, and what is only promised last", () => {
    expect(bars.map((bar) => bar.group)).toEqual(["upper-back", "chest", "biceps", "triceps", "glutes"]);
  });

  it("say what the theme promises and whether it is kept; a share of nothing is no promise", () => {
    // upper-back 100 of 100 + 50 + 50 + 25 = 225: 44 %, and 60 % are promised
    expect(bars[0]).toMatchObject({ wanted: 0.6, missed: true, lopsided: true });
    expect(bars.find((bar) => bar.group === "chest")).toMatchObject({ wanted: null, missed: false, lopsided: false });
    expect(bars.at(-1)).toMatchObject({ seconds: 0, share: 0, wanted: 0.1, missed: true });
  });
});

describe("unevenGroups", () => {
  it("say which side has more, by how much, and from which two items", () => {
    const [first, second] = unevenGroups(plan, balance(plan));
    expect(first).toMatchObject({ group: "upper-back", more: "left", by: 20 });
    expect(first?.pairs).toMatchObject([{ move: "row", by: 20, goTo: "b" }]);
    expect(second).toMatchObject({ group: "biceps", by: 10 });
  });

  it("lead to the item there is where the other side is missing", () => {
    const alone = { ...plan, items: plan.items.slice(0, 1) };
    expect(unevenGroups(alone, balance(alone))[0]?.pairs[0]).toMatchObject({ goTo: "a", right: undefined });
  });

  it("come from their pairs: what the pairs have more is at least what the group has more", () => {
    fc.assert(
      fc.property(validPlan, (any) => {
        const all = balance(any);
        const uneven = unevenGroups(any, all);
        for (const { group, by, pairs } of uneven) {
          expect(pairs.reduce((sum, pair) => sum + pair.by, 0)).toBeGreaterThanOrEqual(by - 1e-6);
          for (const pair of pairs) expect(any.items.some((item) => item.id === pair.goTo)).toBe(true);
          expect(all.groups[group]).toBeDefined();
        }
        expect(uneven).toHaveLength(Object.values(all.groups).filter(isLopsided).length);
      }),
    );
  });
});
