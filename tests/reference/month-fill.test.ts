/**
 * The exact search against a published solver: the same month as a mixed-integer program, solved by HiGHS (Huangfu and Hall,
 * "Parallelizing the dual revised simplex method", Math. Prog. Comp. 10, 2018; package `highs`), must have the same least cost.
 * Beyond a million choices HiGHS proves what the search found; its bound is held to the exact cost.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import { fillMonth } from "#lib/month/fill/fill.ts";
import { emptyPicks, fillProblem } from "#lib/month/fill/problem.ts";
import { searchFill } from "#lib/month/fill/search.ts";
import { fillAndProve, provenFill } from "#server/month-fill/prove.ts";
import { often } from "#tests/support/long.ts";
import { smallFill } from "#tests/support/random-months.ts";
import { studioWeek } from "#tests/support/studio-week.ts";

const LONG_MS = 600_000;

/** From nothing but the empty filling. */
async function bySolver(month: Parameters<typeof fillProblem>[0], tableMost?: number) {
  const problem = fillProblem(month);
  const picks = emptyPicks(problem.sizes);
  const nothing = { picks, cost: problem.costOf(picks), proven: false, bound: Number.NEGATIVE_INFINITY };
  return { exact: searchFill(problem), solver: await provenFill(problem, nothing, tableMost), costOf: problem.costOf };
}

test(
  "small random months: the solver's bound is the least cost",
  async () => {
    await fc.assert(
      fc.asyncProperty(smallFill, async (month) => {
        const { exact, solver } = await bySolver(month);
        expect([solver.proven, solver.bound, solver.cost]).toEqual([true, exact.cost, exact.cost]);
      }),
      { numRuns: often(12, 500) },
    );
  },
  LONG_MS,
);

test(
  "weeks of a studio with up to a million choices",
  async () => {
    for (let seed = 1; seed <= often(3, 60); seed++) {
      const week = { slots: 6, plans: 8, regulars: 1 + (seed % 3), seed };
      const { exact, solver, costOf } = await bySolver(studioWeek(seed % 2 ? week : { ...week, mostUses: 1 }));
      expect([exact.proven, solver.proven]).toEqual([true, true]);
      expect([solver.bound, solver.cost, costOf(solver.picks)]).toEqual([exact.cost, exact.cost, exact.cost]);
    }
  },
  LONG_MS,
);

test(
  "a program that knows few tables, and learns what solutions run into, never claims too much",
  async () => {
    let proven = 0;
    const claims = async (month: Parameters<typeof fillProblem>[0], tableMost: number): Promise<void> => {
      const { exact, solver, costOf } = await bySolver(month, tableMost);
      expect(solver.bound).toBeLessThanOrEqual(exact.cost);
      expect(solver.cost).toBeGreaterThanOrEqual(exact.cost);
      expect(costOf(solver.picks)).toBe(solver.cost);
      if (solver.proven) proven++;
    };
    await fc.assert(
      fc.asyncProperty(smallFill, (month) => claims(month, 6)),
      { numRuns: often(12, 500) },
    );
    for (let seed = 1; seed <= often(2, 30); seed++) {
      const week = studioWeek({ slots: 6, plans: 6, regulars: 1 + (seed % 2), seed });
      // So many that some weeks have too few.
      await claims({ ...week, limits: { varietyLeast: 33 } }, 60);
    }
    expect(proven).toBeGreaterThan(often(8, 300));
  },
  LONG_MS,
);

test(
  "a week of 30 slots and 20 plans is proven, the same each time, and no dearer than what is found without the solver",
  async () => {
    const month = studioWeek({ slots: 30, plans: 20, regulars: 10, mostUses: 2 });
    const answer = await fillAndProve(month);
    expect(answer).toMatchObject({ proven: true, bound: answer.after });
    const own = fillMonth(month);
    expect(own.proven).toBe(false);
    expect(own.bound).toBeLessThanOrEqual(answer.after);
    expect(answer.after).toBeLessThanOrEqual(own.after);
    expect(own.after).toBeLessThanOrEqual(own.before);
    expect(await fillAndProve(structuredClone(month))).toEqual(answer);
    const problem = fillProblem(month);
    const picks = problem.open.map(({ choices }, i) => choices.indexOf(answer.slots[i]?.plan ?? null));
    expect(problem.costOf(Int32Array.from(picks)) / 10_000).toBe(answer.after);
  },
  LONG_MS,
);
