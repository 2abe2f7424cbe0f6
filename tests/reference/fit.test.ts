/**
 * Fit to length against general-purpose solvers on 650 random plans with repetitions and pairs: the mixed-integer solver HiGHS (Huangfu and Hall,
 * "Parallelizing the dual revised simplex method", Math. Prog. Comp. 10, 2018; package `highs`) must find the same
 * optimum, and the quadratic program without a grid (Goldfarb and Idnani, Math. Programming 27, 1983; package
 * `quadprog`) can only be cheaper.
 */
import fc from "fast-check";
import loadHighs from "highs";
import { solveQP } from "quadprog";
import { beforeAll, expect, it } from "vitest";
import { classClock } from "#lib/clock/clock.ts";
import { fitToLength, fittedPlan, type PossibleFit } from "#lib/fit/fit.ts";
import type { Move, MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";
import { costOf, type FitModel, fitLp, fitModel } from "#tests/support/fit-model.ts";
import { often } from "#tests/support/long.ts";
import { validPlan } from "#tests/support/plan-arbitrary.ts";

const SEED = 500_500;

let highs: Awaited<ReturnType<typeof loadHighs>>;
beforeAll(async () => {
  highs = await loadHighs();
});

/** The least cost by HiGHS, or undefined when it finds nothing feasible. */
function byHighs(model: FitModel): number | undefined {
  if (model.items.length === 0) return model.target && model.target[0] <= 0 ? model.fixedCost : undefined;
  const lp = fitLp(model);
  if (lp === "") return undefined;
  const solved = highs.solve(lp, { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 1e-9 });
  expect(["Optimal", "Infeasible"]).toContain(solved.Status);
  return solved.Status === "Optimal" ? solved.ObjectiveValue + model.fixedCost : undefined;
}

/** The least cost of one sum when times may be off the grid and repetitions may be cut at no cost. */
function byQuadprog(model: FitModel, target: number): number {
  const { items, equal } = model;
  const n = items.length;
  const square = (value: (i: number, j: number) => number) => [
    [],
    ...items.map((_, i) => [0, ...items.map((_, j) => value(i, j))]),
  ];
  const columns = [
    items.map(() => 1),
    ...equal.map(([a, b]) => items.map((_, i) => (i === a ? 1 : i === b ? -1 : 0))),
    ...items.flatMap((_, k) => [items.map((_, i) => Number(i === k)), items.map((_, i) => -Number(i === k))]),
  ];
  // Slightly wider bounds: with every item at a bound the solver mistakes rounding for a contradiction.
  const low = (values: readonly number[]) => (values[0] ?? 0) - 1e-7;
  const high = (values: readonly number[]) => (values.at(-1) ?? 0) + 1e-7;
  const bounds = [target, ...equal.map(() => 0), ...items.flatMap(({ values }) => [low(values), -high(values)])];
  const solved = solveQP(
    square((i, j) => (i === j ? 2 / (items[i]?.wish ?? 1) : 0)),
    [0, ...items.map(() => 2)],
    [[], ...items.map((_, i) => [0, ...columns.map((column) => column[i] ?? 0)])],
    [0, ...bounds],
    1 + equal.length,
  );
  expect(solved.message).toBe("");
  const seconds = solved.solution.slice(1, n + 1);
  return items.reduce((sum, item, i) => sum + costOf(item.wish, seconds[i] ?? item.wish, null), model.fixedCost);
}

/** The sum that the fit gives to the items that may change. */
function sumOf(plan: Plan, fit: PossibleFit): number {
  const open = new Set(fitModel(plan).items.map(({ id }) => id));
  return fittedPlan(plan, fit).items.reduce(
    (sum, it) => sum + (it.kind === "move" && open.has(it.id) ? it.seconds : 0),
    0,
  );
}

const NAMES = ["squat", "row", "press", "plank"];
const itemOf = fc.record({
  kind: fc.constantFrom("move", "move", "move", "move", "move", "pause"),
  move: fc.constantFrom(...NAMES),
  side: fc.constantFrom("left" as const, "right" as const, "both" as const),
  seconds: fc.oneof(
    fc.integer({ min: 4, max: 24 }).map((n) => n * 5),
    fc.integer({ min: 40, max: 240 }).map((n) => n / 2),
  ),
  locked: fc.constantFrom(false, false, false, false, false, false, true),
  range: fc.option(fc.tuple(fc.integer({ min: 10, max: 60 }), fc.integer({ min: 61, max: 150 })), { freq: 3 }),
});
/** From the quickest that the format allows to longer than the grid, fractions included; now and then with holds. */
const tempoOf = fc.record({
  outSeconds: fc.oneof(
    fc.integer({ min: 1, max: 90 }).map((n) => n / 10),
    fc.constantFrom(0.1, 2, 2.25, 20),
  ),
  backSeconds: fc.oneof(
    fc.integer({ min: 1, max: 60 }).map((n) => n / 10),
    fc.constantFrom(0.1, 2, 3.33),
  ),
  outHoldSeconds: fc.constantFrom(0, 0, 0, 1, 1.5, 10),
});
const wholeClass = fc
  .record({
    items: fc.array(itemOf, { minLength: 2, maxLength: 12 }),
    tempos: fc.tuple(tempoOf, tempoOf, tempoOf),
    grid: fc.constantFrom(5, 5, 5, 10, 7, 2.5, 3, 12.5, 1, 2.25),
    spare: fc.integer({ min: -60, max: 80 }),
  })
  .map(({ items, tempos: [squat, row, press], grid, spare }) => {
    const list = items.map((it, i): PlanItem => {
      if (it.kind === "pause") return { id: `i${i}`, kind: "pause", seconds: it.seconds };
      const { move: name, side, seconds, locked } = it;
      const more: Partial<MoveItem> = it.range ? { range: [...it.range] } : {};
      return exampleMove(`i${i}`, { move: name, side, seconds, locked, script: [], ...more });
    });
    const tempos: Record<string, Move["tempo"]> = { squat, row, press };
    const moves = Object.entries(exampleMoves).map(([name, move]) => [
      name,
      { ...move, tempo: tempos[name] ?? move.tempo },
    ]);
    return ofLength(examplePlan(list, { gridSeconds: grid, moves: Object.fromEntries(moves) }), spare);
  });

/** By how much the class misses its slot. */
function ofLength(plan: Plan, spare: number): Plan {
  const length = Math.round(classClock(plan).total + spare);
  return { ...plan, lengthSeconds: Math.min(14400, Math.max(60, length)) };
}

const anyShape = fc.tuple(validPlan, fc.integer({ min: -60, max: 90 })).map(([plan, spare]) => ofLength(plan, spare));

it.each([
  ["whole classes with locks, pairs, ranges and odd grids", wholeClass, often(75, 500), often(40, 280)],
  ["plans of every shape the format allows", anyShape, often(25, 150), often(3, 20)],
] as const)(
  "%s: the same optimum as HiGHS, never below the quadratic program",
  (_what, plans, runs, atLeast) => {
    const seen = { possible: 0, paired: 0, locked: 0, whole: 0 };
    fc.assert(
      fc.property(plans, (plan) => {
        const model = fitModel(plan);
        const best = byHighs(model);
        const fit = fitToLength(plan);
        expect(fit.possible).toBe(best !== undefined);
        if (!fit.possible || best === undefined) return;
        expect(Math.abs(fit.cost - best)).toBeLessThan(1e-6 * Math.max(1, best));
        if (model.items.length > 0)
          expect(byQuadprog(model, sumOf(plan, fit))).toBeLessThan(fit.cost + 1e-6 * Math.max(1, best));
        seen.possible++;
        if (model.equal.length > 0) seen.paired++;
        // An item off the grid: only whole repetitions take it there.
        const grid = plan.gridSeconds ?? 5;
        if (fit.changed.some(({ to }) => Math.abs(to - Math.round(to / grid) * grid) > 1e-6)) seen.whole++;
        if (plan.items.some((item) => item.kind === "move" && item.locked)) seen.locked++;
      }),
      { seed: SEED, numRuns: runs },
    );
    expect(seen.possible).toBeGreaterThan(atLeast);
    expect(seen.locked).toBeGreaterThan(often(0, 5));
    if (plans === wholeClass) expect(seen.paired).toBeGreaterThan(often(8, 60));
    expect(seen.whole).toBeGreaterThan(atLeast / 3);
  },
  180_000,
);
