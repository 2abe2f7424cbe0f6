/**
 * Orders against published results: br17 of TSPLIB (Reinelt, "TSPLIB - a traveling salesman problem library", ORSA Journal
 * on Computing 3(4), 1991; 17 cities, asymmetric, published optimum 39), small textbook matrices, and every order of a
 * block tried one by one.
 */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { exactSequence } from "#lib/order/exact.ts";
import { bestOrder } from "#lib/order/order.ts";
import { searchSequence } from "#lib/order/search.ts";
import { type Sequencing, sequenceSeconds } from "#lib/order/sequencing.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";
import { estimateSeconds, setupOf } from "#lib/transitions/transitions.ts";
import { often } from "#tests/support/long.ts";

const SEED = 17_039;

/** A round trip from node 0 and back: the other nodes are the units, with node 0 before and after them. */
function tour(matrix: readonly (readonly number[])[]): Sequencing {
  const count = matrix.length - 1;
  const node = (unit: number) => (unit === count ? 0 : unit + 1);
  return {
    count,
    seconds: (from, to) => matrix[node(from)]?.[node(to)] ?? 0,
    after: Array.from({ length: count }, () => []),
    sizes: Array.from({ length: count }, () => 1),
    earliest: Array.from({ length: count }, () => 0),
    silent: Array.from({ length: count }, () => false),
  };
}

describe("round trips", () => {
  const lines = readFileSync(new URL("../fixtures/br17.atsp", import.meta.url), "utf8").split("\n");
  const rows = lines.filter((line) => /^[\s\d]+$/.test(line) && line.trim() !== "");
  const br17 = tour(rows.map((line) => line.trim().split(/\s+/).map(Number)));

  it("br17: 39, exactly and by search", () => {
    expect(br17.count).toBe(16);
    const exact = exactSequence(br17);
    expect(exact?.seconds).toBe(39);
    expect(sequenceSeconds(br17, exact?.order ?? [])).toBe(39);
    const found = searchSequence(br17);
    expect(found?.seconds).toBe(39);
    expect(sequenceSeconds(br17, found?.order ?? [])).toBe(39);
  });

  // Common teaching examples (from memory, no text at hand); their optima were worked out by trying all tours.
  it.each([
    [
      [
        [0, 1, 15, 6],
        [2, 0, 7, 3],
        [9, 6, 0, 12],
        [10, 4, 8, 0],
      ],
      21,
    ],
    [
      [
        [0, 10, 15, 20],
        [10, 0, 35, 25],
        [15, 35, 0, 30],
        [20, 25, 30, 0],
      ],
      80,
    ],
    [
      [
        [0, 10, 15, 20],
        [5, 0, 9, 10],
        [6, 13, 0, 12],
        [8, 8, 9, 0],
      ],
      35,
    ],
  ])("four cities: %j", (matrix, optimum) => {
    expect(exactSequence(tour(matrix))).toEqual({ order: [0, 2, 1], seconds: optimum });
    expect(searchSequence(tour(matrix))?.seconds).toBe(optimum);
  });
});

/** The definition of the format in its simplest form: try every order of the block's move items. */
interface Tried {
  readonly seconds: number;
  readonly order: readonly MoveItem[];
}

const isMove = (item: PlanItem): item is MoveItem => item.kind === "move";

function blockItems(plan: Plan): PlanItem[] {
  const from = plan.items.findIndex((item) => item.id === "block");
  const to = plan.items.findIndex((item, i) => i > from && item.kind === "heading");
  return plan.items.slice(from + 1, to < 0 ? undefined : to);
}

function through(plan: Plan, inside: readonly MoveItem[]): number {
  const from = plan.items.findIndex((item) => item.id === "block");
  const above = plan.items.slice(0, from).filter(isMove).at(-1);
  const below = plan.items.slice(from + 1 + blockItems(plan).length).find(isMove);
  const line = [...(above ? [above] : []), ...inside, ...(below ? [below] : [])];
  let sum = 0;
  for (const [i, item] of line.entries()) {
    const before = line[i - 1];
    const [a, b] = [before && setupOf(plan, before), setupOf(plan, item)];
    if (a && b) sum += estimateSeconds(plan, a, b);
  }
  return sum;
}

/** Tied items are together in plan order, and every item follows those it comes after; within the block only. */
function keeps(plan: Plan, order: readonly MoveItem[]): boolean {
  const stood = blockItems(plan).filter(isMove);
  const place = new Map(order.map((item, i) => [item.id, i]));
  return order.every((item, i) => {
    const tie = item.keep === undefined ? [] : stood.filter((other) => other.keep === item.keep);
    const behind = tie[tie.indexOf(item) - 1];
    if (behind && place.get(behind.id) !== i - 1) return false;
    return (item.after ?? []).every((id) => (place.get(id) ?? -1) < i);
  });
}

function* orders(items: readonly MoveItem[]): Generator<MoveItem[]> {
  if (items.length === 0) yield [];
  for (const [i, item] of items.entries())
    for (const rest of orders([...items.slice(0, i), ...items.slice(i + 1)])) yield [item, ...rest];
}

function bestTried(plan: Plan): Tried | undefined {
  let best: Tried | undefined;
  for (const order of orders(blockItems(plan).filter(isMove))) {
    if (!keeps(plan, order)) continue;
    const seconds = through(plan, order);
    if (!best || seconds < best.seconds) best = { seconds, order };
  }
  return best;
}

const setup = fc.record({
  move: fc.constantFrom("squat", "row", "press", "plank"),
  side: fc.constantFrom("left" as const, "right" as const, "both" as const),
  springs: fc.record({ light: fc.nat(3), heavy: fc.nat(2) }),
  facing: fc.constantFrom(undefined, "front" as const, "back" as const, "left" as const),
});
const block = fc
  .record({
    around: fc.array(setup, { minLength: 2, maxLength: 2 }),
    edges: fc.tuple(fc.boolean(), fc.boolean()),
    inside: fc.array(
      fc.record({
        setup,
        pause: fc.constantFrom(false, false, false, false, true),
        keep: fc.constantFrom(undefined, undefined, undefined, "t1", "t2"),
        after: fc.constantFrom([], [], [], [0], [1], [2], [1, 3]),
      }),
      { minLength: 1, maxLength: 7 },
    ),
  })
  .map(({ around, edges, inside }) => {
    const made = (id: string, s: (typeof around)[number], more: Partial<MoveItem> = {}) => {
      const { facing, ...rest } = s;
      return exampleMove(id, { ...rest, ...(facing ? { facing } : {}), script: [], ...more });
    };
    const items = inside.map((it, i): PlanItem => {
      if (it.pause) return { id: `i${i}`, kind: "pause", seconds: 10 };
      const after = it.after.filter((n) => n !== i && inside[n] && !inside[n].pause).map((n) => `i${n}`);
      return made(`i${i}`, it.setup, {
        ...(it.keep ? { keep: it.keep } : {}),
        ...(after.length > 0 ? { after } : {}),
      });
    });
    return examplePlan([
      ...(edges[0] && around[0] ? [made("above", around[0])] : []),
      { id: "block", kind: "heading", title: "Block" },
      ...items,
      { id: "next", kind: "heading", title: "Next" },
      ...(edges[1] && around[1] ? [made("below", around[1])] : []),
    ]);
  });

describe("every order tried", () => {
  it("random blocks with ties, waits and pauses: the same seconds, no constraint broken", () => {
    const seen = { better: 0, none: 0, held: 0 };
    fc.assert(
      fc.property(block, (plan) => {
        const best = bestTried(plan);
        const found = bestOrder(plan, "block");
        expect(found.ok).toBe(best !== undefined);
        if (!found.ok || !best) {
          seen.none++;
          return;
        }
        expect(found).toMatchObject({ after: best.seconds, proven: true });
        const now = blockItems(plan);
        expect(found.before).toBe(through(plan, now.filter(isMove)));
        expect([...found.items].sort()).toEqual(now.map((item) => item.id).sort());
        const order = found.items.flatMap((id) => now.filter((item) => item.id === id));
        const moves = order.filter(isMove);
        expect(through(plan, moves)).toBe(best.seconds);
        expect(keeps(plan, moves)).toBe(true);
        if (keeps(plan, now.filter(isMove))) expect(found.after).toBeLessThanOrEqual(found.before);
        if (found.after < found.before) seen.better++;
        if (found.heldBy.length > 0) seen.held++;
      }),
      { seed: SEED, numRuns: often(50, 300) },
    );
    expect(seen.better).toBeGreaterThan(often(15, 100));
    expect(seen.held).toBeGreaterThan(often(15, 100));
    expect(seen.none).toBeGreaterThan(often(0, 5));
  });
});
