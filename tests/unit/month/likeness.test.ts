/** What holds for likeness, variety and recovery whatever the numbers, and some worked by hand. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { monthSums } from "#lib/month/check/analyst.ts";
import { planLikeness } from "#lib/month/sums/likeness.ts";
import { GROUPS } from "#lib/plan/schema.ts";
import { smallMonth, smallPlan, smallSlot } from "#tests/support/small-month.ts";

const seconds = fc.double({ min: 0, max: 1000, noNaN: true });
const planArb = fc.record({
  moves: fc.dictionary(fc.constantFrom("a", "b", "c", "d", "constructor"), seconds),
  groups: fc.dictionary(fc.constantFrom(...GROUPS.slice(0, 5)), seconds),
});
const plan = (part: Parameters<typeof smallPlan>[0]) => smallPlan(part);
const isEmpty = (moves: Readonly<Record<string, number>>): boolean => !Object.values(moves).some((s) => s > 0);

describe("likeness", () => {
  test("is symmetric, from 0 to 1, 1 with itself, null without moves", () => {
    fc.assert(
      fc.property(planArb, planArb, (a, b) => {
        const [one, other] = [plan(a), plan(b)];
        const like = planLikeness(one, other);
        expect(like).toBe(planLikeness(other, one));
        expect(like === null).toBe(isEmpty(a.moves) || isEmpty(b.moves));
        if (like !== null) {
          expect(like).toBeGreaterThanOrEqual(0);
          expect(like).toBeLessThanOrEqual(1 + 1e-9);
        }
        if (!isEmpty(a.moves)) expect(planLikeness(one, plan(structuredClone(a)))).toBeCloseTo(1, 9);
      }),
    );
  });

  // By hand: moves 20 of 60 s; shares (1/4, 3/4) and (3/4, 1/4) share 1/2.
  test.each([
    [
      "half by moves, half by groups",
      { a: 30, b: 10 },
      { a: 20, c: 20 },
      { chest: 1, calves: 3 },
      { chest: 30, calves: 10 },
      (20 / 60 + 0.5) / 2,
    ],
    ["nothing shared", { a: 10 }, { b: 10 }, { chest: 1 }, { calves: 1 }, 0],
    ["moves alone where one has no work by group", { a: 10 }, { a: 20 }, {}, { calves: 1 }, 0.5],
    ["nothing moved", { a: 0 }, { a: 20 }, { calves: 1 }, { calves: 1 }, null],
  ] as const)("%s", (_, movesA, movesB, groupsA, groupsB, expected) => {
    const like = planLikeness(plan({ moves: movesA, groups: groupsA }), plan({ moves: movesB, groups: groupsB }));
    if (expected === null) expect(like).toBeNull();
    else expect(like).toBeCloseTo(expected, 12);
  });
});

const early = (id: string, date: string, of: string | null, start = "10:00") =>
  smallSlot(id, { date, start, plan: of, regulars: ["early"] });
const sums = (slots: ReturnType<typeof early>[], plans: Record<string, ReturnType<typeof smallPlan>>) => {
  const { early: of } = monthSums(smallMonth({ slots, plans })).regulars;
  if (!of) throw new Error("no sums");
  return of;
};

describe("variety", () => {
  test("n moves of one length are as many as n; one that takes most of the time is little more than one", () => {
    const four = smallPlan({ moves: { a: 5, b: 5, c: 5, d: 5, e: 0 } });
    expect(sums([early("x", "2026-04-06", "a")], { a: four }).variety).toEqual({ distinct: 4, effective: 4 });
    // (90² + 10²) / 100² = 0.82.
    const uneven = sums([early("x", "2026-04-06", "a")], { a: smallPlan({ moves: { a: 90, b: 10 } }) });
    expect(uneven.variety.effective).toBeCloseTo(1 / 0.82, 12);
    expect(sums([], {}).variety).toEqual({ distinct: 0, effective: null });
  });
});

describe("neighbours", () => {
  test("an empty slot stands between", () => {
    const a = smallPlan({ moves: { a: 1 } });
    const slots = [early("x", "2026-04-06", "a"), early("y", "2026-04-07", null), early("z", "2026-04-08", "a")];
    expect(sums(slots, { a }).neighbours).toEqual([
      { slots: ["x", "y"], likeness: null },
      { slots: ["y", "z"], likeness: null },
    ]);
  });
});

describe("recovery", () => {
  const hard = smallPlan({ groups: { chest: 300 } });
  const little = (chest: number) => smallPlan({ groups: { chest } });

  test("runs from the last class with a tenth of the limit to the first", () => {
    const slots = [
      ...[
        early("a", "2026-04-06", "hard"),
        early("b", "2026-04-06", "tenth", "12:00"),
        early("c", "2026-04-06", "less", "14:00"),
      ],
      ...[
        early("d", "2026-04-08", "less", "07:00"),
        early("e", "2026-04-08", "tenth", "08:00"),
        early("f", "2026-04-08", "hard"),
      ],
    ];
    const { recovery } = sums(slots, { hard, tenth: little(30), less: little(29.9) });
    expect(recovery).toEqual([
      { group: "chest", from: "2026-04-06", to: "2026-04-08", minutes: 43 * 60 + 15, slots: ["b", "e"] },
    ]);
  });

  test("on a day of many small classes every one counts", () => {
    const small = Array.from({ length: 13 }, (_, i) =>
      early(`s${String(i).padStart(2, "0")}`, "2026-04-06", "less", `${String(6 + i).padStart(2, "0")}:00`),
    );
    const { recovery } = sums([...small, early("z", "2026-04-08", "hard")], { hard, less: little(25) });
    expect(recovery[0]?.slots).toEqual(["s12", "z"]);
  });

  test("of two that end together the later id counts, of two that begin together the earlier", () => {
    const slots = [
      ...[early("a", "2026-04-06", "hard"), early("b", "2026-04-06", "hard")],
      ...[early("d", "2026-04-08", "hard"), early("c", "2026-04-08", "hard")],
    ];
    expect(sums(slots, { hard }).recovery[0]?.slots).toEqual(["b", "c"]);
  });
});
