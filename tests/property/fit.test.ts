/** The fit against all possible answers tried one by one, with exact fractions as costs: same optimum, same tie-break. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { classClock } from "#lib/clock/clock.ts";
import { type Fit, fitToLength, fittedPlan } from "#lib/fit/fit.ts";
import { bestOrder } from "#lib/order/order.ts";
import { sidePairs } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { parsePlan } from "#lib/plan-file/parse.ts";
import { exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";
import { costOf, repOf } from "#tests/support/fit-model.ts";
import { often } from "#tests/support/long.ts";
import { damagedPlan, validPlan } from "#tests/support/plan-arbitrary.ts";

const SEED = 20_117;

/** The definition of the format in its simplest form: all possible answers. */
interface Answer {
  readonly seconds: ReadonlyMap<string, number>;
  readonly closing: number;
}
interface Part {
  readonly items: readonly MoveItem[];
  readonly values: readonly number[];
}

const isMove = (item: PlanItem): item is MoveItem => item.kind === "move";

function partsOf(plan: Plan): { parts: Part[]; fixed: Map<string, number> } {
  const grid = plan.gridSeconds ?? 5;
  const fixed = new Map<string, number>();
  const parts: Part[] = [];
  const pairs = sidePairs(plan);
  for (const item of plan.items.filter(isMove)) {
    const pair = pairs.find((p) => p.left === item || p.right === item);
    const other = pair?.left === item ? pair.right : pair?.left;
    if (item.locked || other?.locked) {
      fixed.set(item.id, item.locked ? item.seconds : (other?.seconds ?? 0));
      continue;
    }
    if (other && plan.items.indexOf(other) < plan.items.indexOf(item)) continue;
    const items = other ? [item, other] : [item];
    const inside = (d: number) =>
      items.every((it) => {
        const [a, b] = it.range ?? plan.moves[it.move]?.seconds ?? [it.seconds / 2, it.seconds * 1.5];
        return d >= a && d <= b;
      });
    const values: number[] = [];
    for (let d = grid; d <= 400; d += grid) if (inside(d)) values.push(d);
    const rep = repOf(plan, item);
    for (let k = 1; rep !== null && k * rep <= 400; k++)
      if (inside(Math.round(k * rep)) && !values.includes(Math.round(k * rep))) values.push(Math.round(k * rep));
    parts.push({ items, values });
  }
  return { parts, fixed };
}

function everyAnswer(plan: Plan): { answers: Answer[]; fixed: Map<string, number> } {
  const { parts, fixed } = partsOf(plan);
  const clock = classClock(plan);
  const others = plan.items.filter(isMove).filter((item) => !fixed.has(item.id));
  const wasFixed = plan.items.filter(isMove).filter((item) => fixed.has(item.id));
  const sum = (items: readonly MoveItem[]) => items.reduce((s, item) => s + item.seconds, 0);
  const rest =
    plan.lengthSeconds - (clock.total - sum(others) - sum(wasFixed) + [...fixed.values()].reduce((a, b) => a + b, 0));
  const grid = plan.gridSeconds ?? 5;
  const least = Math.floor(rest) - (grid - 1);
  let chosen: { sum: number; values: number[] }[] = [{ sum: 0, values: [] }];
  for (const { items, values } of parts) {
    const longer = chosen.flatMap((c) =>
      values.map((v) => ({ sum: c.sum + v * items.length, values: [...c.values, v] })),
    );
    chosen = longer.filter((c) => c.sum <= rest);
  }
  const answers = chosen
    .filter((c) => c.sum >= least && rest >= 0)
    .map((c) => ({
      seconds: new Map(parts.flatMap(({ items }, i) => items.map((item) => [item.id, c.values[i] ?? 0] as const))),
      closing: (plan.closingSeconds ?? 60) + rest - c.sum,
    }));
  return { answers, fixed };
}

/** Cost over the common denominator of all wishes, in halves: a whole number; a repetition cut off costs 2, that is 4. */
function exactCost(plan: Plan, answer: Answer): bigint {
  const items = plan.items.filter(isMove).filter((item) => answer.seconds.has(item.id));
  const whole = (x: number) => BigInt(Math.round(x * 2));
  const product = items.reduce((p, item) => p * whole(item.seconds), 1n);
  return items.reduce((cost, item) => {
    const off = whole(answer.seconds.get(item.id) ?? 0) - whole(item.seconds);
    const cut =
      costOf(1, answer.seconds.get(item.id) ?? 0, repOf(plan, item)) -
      costOf(1, answer.seconds.get(item.id) ?? 0, null);
    return cost + (off * off * product) / whole(item.seconds) + BigInt(Math.round(cut * 2)) * product;
  }, 0n);
}

function bestAnswer(plan: Plan, answers: readonly Answer[]): Answer | undefined {
  const items = plan.items.filter(isMove);
  const off = (a: Answer) => items.map((item) => Math.abs((a.seconds.get(item.id) ?? item.seconds) - item.seconds));
  const at = (a: Answer) => items.map((item) => a.seconds.get(item.id) ?? 0);
  const compare = (a: readonly number[], b: readonly number[]): number => {
    const i = a.findIndex((x, k) => x !== b[k]);
    return i < 0 ? 0 : (a[i] ?? 0) - (b[i] ?? 0);
  };
  return answers.reduce<Answer | undefined>((best, a) => {
    if (!best) return a;
    const [x, y] = [exactCost(plan, a), exactCost(plan, best)];
    if (x !== y) return x < y ? a : best;
    if (a.closing !== best.closing) return a.closing < best.closing ? a : best;
    return (compare(off(a), off(best)) || compare(at(a), at(best))) < 0 ? a : best;
  }, undefined);
}

function withRep(name: "row" | "press", seconds: number): Plan["moves"][string] {
  return { ...exampleMoves[name], tempo: { outSeconds: seconds / 2, backSeconds: seconds / 2 } };
}

/** Few wishes from a small list, so that ties and sides with the same mean are frequent. */
const small = fc
  .record({
    grid: fc.constantFrom(5, 5, 10, 10, 7.5, 6),
    items: fc.array(
      fc.record({
        wish: fc.constantFrom(20, 30, 30, 30, 45, 60, 22.5),
        kind: fc.constantFrom("single", "single", "single", "left", "left", "right", "right", "pause"),
        move: fc.constantFrom("row", "press"),
        locked: fc.constantFrom(false, false, false, false, false, true),
        range: fc.constantFrom(undefined, [20, 45] as const, [25, 45] as const, [31, 52.5] as const),
      }),
      { minLength: 1, maxLength: 5 },
    ),
    // Whole and half seconds; slow ones, so that all answers can be tried.
    reps: fc.tuple(fc.constantFrom(5, 5, 7.5, 8, 11), fc.constantFrom(5, 5, 10, 13, 22.5)),
    spare: fc.integer({ min: -40, max: 40 }),
  })
  .map(({ grid, items, reps: [row, press], spare }) => {
    const list = items.map((it, i): PlanItem => {
      if (it.kind === "pause") return { id: `p${i}`, kind: "pause", seconds: it.wish };
      const side = it.kind === "single" ? "both" : it.kind === "left" ? "left" : "right";
      return exampleMove(`m${i}`, {
        move: it.move,
        side,
        seconds: it.wish,
        script: [],
        ...(it.locked ? { locked: true } : {}),
        ...(it.range ? { range: [...it.range] } : {}),
      });
    });
    const moves = { ...exampleMoves, row: withRep("row", row), press: withRep("press", press) };
    const plan = examplePlan(list, { gridSeconds: grid, moves });
    return { ...plan, lengthSeconds: Math.max(60, Math.ceil(classClock(plan).total + spare)) };
  });

const asSeconds = (plan: Plan): Map<string, number> =>
  new Map(plan.items.filter(isMove).map((item) => [item.id, item.seconds]));

test("finds the same answer as trying all, or none when there is none", () => {
  let [possible, tied] = [0, 0];
  fc.assert(
    fc.property(small, (plan) => {
      const { answers, fixed } = everyAnswer(plan);
      const best = bestAnswer(plan, answers);
      const fit = fitToLength(plan);
      expect(fit.possible).toBe(best !== undefined);
      if (!fit.possible || !best) return;
      possible++;
      const cost = exactCost(plan, best);
      if (answers.filter((a) => exactCost(plan, a) === cost).length > 1) tied++;
      expect(asSeconds(fittedPlan(plan, fit))).toEqual(new Map([...asSeconds(plan), ...fixed, ...best.seconds]));
      expect(fit.closingSeconds).toBeCloseTo(best.closing, 9);
    }),
    { seed: SEED, numRuns: often(600, 4000) },
  );
  expect(possible).toBeGreaterThan(often(180, 1200));
  expect(tied).toBeGreaterThan(often(12, 80));
});

/** The laws on plans of every shape the format allows. */
function holdsTheLaws(plan: Plan, fit: Fit): void {
  if (!fit.possible) {
    expect(fit.say).toMatch(/^[^\n]+\.$/);
    expect(fit.say.length).toBeLessThan(400);
    expect(fit.shortest).toBeLessThanOrEqual(fit.longest);
    return;
  }
  const fitted = fittedPlan(plan, fit);
  expect(classClock(fitted).total).toBeCloseTo(plan.lengthSeconds, 6);
  expect(parsePlan(fitted)).toMatchObject({ ok: true });
  const more = fit.closingSeconds - (plan.closingSeconds ?? 60);
  expect(more).toBeGreaterThanOrEqual(0);
  expect(more).toBeLessThan(plan.gridSeconds ?? 5);
  const changed = new Set(fit.changed.map((c) => c.item));
  for (const item of plan.items.filter(isMove)) if (item.locked) expect(changed.has(item.id)).toBe(false);
  for (const { left, right } of sidePairs(fitted))
    if (left && right && !(left.locked && right.locked)) expect(left.seconds).toBe(right.seconds);
  // A class that fits already, with whole repetitions, is left unchanged.
  const open = fitted.items.filter(isMove).filter((item) => !item.locked);
  if (open.some((item) => costOf(item.seconds, item.seconds, repOf(fitted, item)) > 0)) return;
  expect(fitToLength(fitted)).toMatchObject({ possible: true, changed: [] });
}

test("is exact or says why, on any plan", () => {
  let possible = 0;
  const anyLength = fc.tuple(validPlan, fc.integer({ min: -300, max: 300 })).map(([plan, spare]) => {
    const length = Math.round(classClock(plan).total + spare);
    return { ...plan, lengthSeconds: Math.min(14400, Math.max(60, length)) };
  });
  fc.assert(
    fc.property(fc.oneof(anyLength, validPlan), (plan) => {
      const fit = fitToLength(plan);
      possible += Number(fit.possible);
      holdsTheLaws(plan, fit);
    }),
    { seed: SEED, numRuns: often(300, 2000) },
  );
  expect(possible).toBeGreaterThan(often(15, 100));
});

test("never throws on plans with wrong contents: gives an answer or a sentence", () => {
  fc.assert(
    fc.property(damagedPlan, (plan) => {
      const fit = fitToLength(plan);
      if (fit.possible) fittedPlan(plan, fit);
      else expect(fit.say).not.toBe("");
      for (const item of plan.items) if (item.kind === "heading") bestOrder(plan, item.id);
    }),
    { seed: SEED, numRuns: often(200, 1000) },
  );
});
