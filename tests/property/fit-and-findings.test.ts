/**
 * Findings about times and the fit never contradict each other: a fix that is taken is kept by the next fit, a fit that is
 * taken leaves nothing to say about the length, and cuts a repetition off only where whole ones would cost more (by HiGHS,
 * on the same class with whole repetitions alone).
 */
import fc from "fast-check";
import loadHighs from "highs";
import { expect, test } from "vitest";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import { fitToLength, fittedPlan } from "#lib/fit/fit.ts";
import { whatHelps } from "#lib/fit/help.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { remedyFor } from "#lib/remedies/remedies.ts";
import type { Remedy } from "#lib/remedies/remedy.ts";
import { exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";
import { costOf, type FitModel, fitLp, fitModel, type ModelItem } from "#tests/support/fit-model.ts";
import { often } from "#tests/support/long.ts";

const SEED = 3_141;
const RUNS = often(10, 60);
const NAMES = Object.keys(STARTER_MOVES);

/** Classes from the starter library with typical seconds, up to a minute and a half off their slot. */
const classes = fc
  .record({
    grid: fc.constantFrom(1, 5, 5, 5, 10),
    spare: fc.integer({ min: -90, max: 90 }),
    items: fc.array(
      fc.record({
        name: fc.constantFrom(...NAMES),
        seconds: fc.integer({ min: 15, max: 110 }),
        locked: fc.constantFrom(false, false, false, false, true),
      }),
      { minLength: 2, maxLength: 14 },
    ),
  })
  .map(({ grid, spare, items }): Plan => {
    const list = items.flatMap(({ name, seconds, locked }, i): PlanItem[] => {
      const sides = STARTER_MOVES[name]?.sides === "each" ? (["left", "right"] as const) : (["both"] as const);
      return sides.map((side, n) =>
        exampleMove(`i${i}${side}`, {
          move: name,
          side,
          seconds: seconds + n,
          ...(locked ? { locked } : {}),
          script: [],
        }),
      );
    });
    const plan = examplePlan(list, { moves: { ...STARTER_MOVES }, gridSeconds: grid });
    return { ...plan, lengthSeconds: Math.max(60, Math.round(checkPlan(plan).total) + spare) };
  });

function taken(plan: Plan, mend: Remedy): Plan {
  const to = new Map(mend.changes.map((change) => [change.itemId, change]));
  const items = plan.items.map((item): PlanItem => {
    const change = to.get(item.id);
    return item.kind === "move" && change?.field === "seconds" ? { ...item, seconds: change.value ?? 0 } : item;
  });
  return { ...plan, items };
}

const secondsIn = (plan: Plan): Map<string, number> =>
  new Map(plan.items.filter((it): it is MoveItem => it.kind === "move").map((it) => [it.id, it.seconds]));

const OF_TIME = ["partial-rep", "too-short-or-long"];

/** Takes every fix about a time, each by itself, and fits afterwards. Returns how many there were. */
function offersAreKept(plan: Plan): number {
  let offers = 0;
  for (const finding of checkPlan(plan).findings.filter(({ rule }) => OF_TIME.includes(rule))) {
    const mend = remedyFor(plan, finding);
    if (!mend) continue;
    offers++;
    const after = taken(plan, mend);
    const rules = (p: Plan) => checkPlan(p).findings.filter((f) => f.rule === finding.rule && f.key === finding.key);
    expect(rules(after), `${finding.message} ${mend.label}`).toEqual([]);
    const fit = fitToLength(after);
    if (!fit.possible) continue;
    const fitted = secondsIn(fittedPlan(after, fit));
    for (const change of mend.changes) expect(fitted.get(change.itemId), mend.label).toBe(change.value);
  }
  return offers;
}

test("whatever fix is taken before or after a fit is kept by the next fit", () => {
  const seen = { before: 0, after: 0, fits: 0, cutBefore: 0, cutAfter: 0 };
  const cut = (plan: Plan): number => checkPlan(plan).findings.filter(({ rule }) => rule === "partial-rep").length;
  fc.assert(
    fc.property(classes, (plan) => {
      seen.before += offersAreKept(plan);
      const fit = fitToLength(plan);
      if (!fit.possible) return;
      seen.fits++;
      const fitted = fittedPlan(plan, fit);
      seen.after += offersAreKept(fitted);
      seen.cutBefore += cut(plan);
      seen.cutAfter += cut(fitted);
    }),
    { seed: SEED, numRuns: RUNS },
  );
  expect(seen.fits).toBeGreaterThan(RUNS / 3);
  expect(seen.before).toBeGreaterThan(RUNS);
  // The fit finds whole repetitions for nearly all: the rest are held by a lock or by the room.
  expect(seen.cutAfter).toBeLessThan(seen.cutBefore / 3);
}, 120_000);

/** The class with whole repetitions alone: the cost of its best times, undefined where it has none. */
function wholeOnly(highs: Awaited<ReturnType<typeof loadHighs>>, model: FitModel): number | undefined {
  const isWhole =
    ({ wish, rep }: ModelItem) =>
    (d: number) =>
      costOf(wish, d, rep) === costOf(wish, d, null);
  const items = model.items.map((item) => ({ ...item, values: item.values.filter(isWhole(item)) }));
  const lp = fitLp({ ...model, items });
  if (lp === "") return undefined;
  const solved = highs.solve(lp, { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 1e-9 });
  return solved.Status === "Optimal" ? solved.ObjectiveValue + model.fixedCost : undefined;
}

/** What is found about items whose times the fit may set. */
function cutIn(plan: Plan): number {
  const open = new Set(fitModel(plan).items.map(({ id }) => id));
  const { findings } = checkPlan(plan);
  return findings.filter(({ rule, items }) => rule === "partial-rep" && open.has(items[0] ?? "")).length;
}

test("a fit that is taken leaves no word about the length, and only those cut repetitions that are the lesser evil", async () => {
  const highs = await loadHighs();
  const seen = { fits: 0, silent: 0, cut: 0, cutAgain: 0 };
  fc.assert(
    fc.property(classes, (plan) => {
      const fit = fitToLength(plan);
      if (!fit.possible) return;
      seen.fits++;
      const fitted = fittedPlan(plan, fit);
      expect(checkPlan(fitted).findings.filter(({ rule }) => rule === "total-length")).toEqual([]);
      const cut = cutIn(fitted);
      if (cut === 0) {
        seen.silent++;
        return;
      }
      const whole = wholeOnly(highs, fitModel(plan));
      if (whole === undefined) return;
      expect(whole).toBeGreaterThan(fit.cost - 1e-6);
      seen.cut += cut;
      const again = fitToLength(fitted);
      if (again.possible) seen.cutAgain += cutIn(fittedPlan(fitted, again));
    }),
    { seed: SEED, numRuns: often(60, 300) },
  );
  expect(seen.silent).toBeGreaterThan(seen.fits / 2);
  // With the fitted times as wishes, whole repetitions are near: a second fit takes nearly all of them.
  expect(seen.cutAgain).toBeLessThan(seen.cut / 3);
}, 120_000);

test("more moves are asked for only where the fit cannot do it, and by the same number on both sides", () => {
  const seen = { fits: 0, moves: 0 };
  const short = fc.tuple(classes, fc.integer({ min: 0, max: 900 }));
  fc.assert(
    fc.property(short, ([plan, missing]) => {
      const longer = { ...plan, lengthSeconds: plan.lengthSeconds + missing };
      const [found] = checkPlan(longer).findings.filter(({ rule }) => rule === "total-length");
      const fit = fitToLength(longer);
      if (fit.possible) {
        seen.fits++;
        expect(found?.values.moreMoves).toBeUndefined();
        return;
      }
      const [first] = whatHelps(longer, fit);
      const offered = first?.by === "moves" ? first.count : undefined;
      if (offered !== undefined) seen.moves++;
      expect(found?.values.moreMoves).toBe(offered);
    }),
    { seed: SEED, numRuns: often(40, 400) },
  );
  expect(seen.fits).toBeGreaterThan(often(2, 5));
  expect(seen.moves).toBeGreaterThan(often(8, 20));
});
