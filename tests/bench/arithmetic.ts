/**
 * How long the arithmetic takes: fit and order beside the mixed-integer solver HiGHS on the same problems (its optimum must
 * be the same), reading what set-ups tell, and the slowest of the damaged files. The full check stands with the cue track, in `cues.ts`.
 * Exit 1 when a target is missed; ends with an exception when an optimum differs.
 */
import loadHighs from "highs";
import { planActs } from "#lib/acts/plan-acts.ts";
import { classClock } from "#lib/clock/clock.ts";
import { fitToLength } from "#lib/fit/fit.ts";
import { bestOrder } from "#lib/order/order.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { exampleMove } from "#lib/rules/define/example-plan.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";
import { estimateSeconds, setupOf } from "#lib/transitions/transitions.ts";
import { COMMAND_NAMES, runPlanCommand } from "#server/cli/commands.ts";
import { readPlanBytes } from "#server/cli/read-plan.ts";
import { type DamagedFile, damagedFiles } from "#tests/support/damaged-files.ts";
import { Dice } from "#tests/support/dice.ts";
import { fitLp, fitModel } from "#tests/support/fit-model.ts";
import { longClass } from "#tests/support/long-class.ts";
import { worstFiles } from "#tests/support/worst-files.ts";
import { type OrderModel, orderLp } from "./order-lp.ts";
import { spread, taken } from "./timing.ts";

const EXACT = { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 1e-9 };
const highs = await loadHighs();
let allMet = true;

function target(what: string, is: number, { atMost, atLeast }: { atMost?: number; atLeast?: number }): void {
  const met = atMost === undefined ? is >= (atLeast ?? 0) : is <= atMost;
  if (!met) allMet = false;
  const wanted = atMost === undefined ? `at least ${atLeast}` : `at most ${atMost}`;
  console.log(`  target: ${what} ${wanted}; ${is.toFixed(2)}. ${met ? "met" : "missed"}.`);
}

interface Pair {
  readonly own: number;
  readonly peer: number;
}

/** Prints both and the ratio of their sums. */
function compare(pairs: readonly Pair[], atLeast: number): void {
  const own = spread(pairs.map((p) => p.own));
  const peer = spread(pairs.map((p) => p.peer));
  const sum = (of: (p: Pair) => number): number => pairs.reduce((total, p) => total + of(p), 0);
  console.log(
    `  own p50 ${own.p50.toFixed(3)} ms, p99 ${own.p99.toFixed(3)} ms; HiGHS p50 ${peer.p50.toFixed(1)} ms, p99 ${peer.p99.toFixed(1)} ms`,
  );
  target("times quicker in sum", sum((p) => p.peer) / sum((p) => p.own), { atLeast });
}

const LIBRARY = Object.keys(STARTER_MOVES);
const FACINGS = ["front", "back", "left", "right"] as const;

function item(id: string, dice: Dice, more: Partial<MoveItem> = {}): MoveItem {
  const side = dice.one(["left", "right", "both"] as const);
  const springs = { light: dice.upTo(3), firm: dice.upTo(3) };
  return exampleMove(id, { move: dice.one(LIBRARY), side, springs, facing: dice.one(FACINGS), script: [], ...more });
}

/** A class of 60 moves with pairs, locks and ranges, some minutes off its slot. */
function fitClass(seed: number): Plan {
  const dice = new Dice(seed);
  const items = Array.from({ length: 60 }, (_, i) => {
    const more: Partial<MoveItem> =
      dice.upTo(8) === 0 ? { locked: true } : { range: [20 + dice.upTo(15), 60 + dice.upTo(40)] };
    return item(`i${i}`, dice, { move: dice.one(LIBRARY.slice(0, 8)), seconds: 30 + dice.upTo(31), ...more });
  });
  const plan: Plan = { ...longClass(1, 0), moves: { ...STARTER_MOVES }, items, lengthSeconds: 14400 };
  return { ...plan, lengthSeconds: Math.round(classClock(plan).total) + dice.upTo(240) - 120 };
}

function fits(): void {
  console.log("fit of 60 moves to their length, beside HiGHS on the same problem as a mixed-integer program");
  const pairs = Array.from({ length: 20 }, (_, i): Pair => {
    const plan = fitClass(i + 1);
    const model = fitModel(plan);
    const lp = fitLp(model);
    for (let warm = 0; warm < 20; warm++) fitToLength(plan);
    const own = taken(() => fitToLength(plan));
    const peer = taken(() => highs.solve(lp, EXACT));
    const best = peer.value.Status === "Optimal" ? peer.value.ObjectiveValue + model.fixedCost : undefined;
    const cost = own.value.possible ? own.value.cost : undefined;
    if (Math.abs((cost ?? -1) - (best ?? -1)) > 1e-6 * Math.max(1, best ?? 1))
      throw new Error(`class ${i}: ${cost} is not ${best}`);
    return { own: own.ms, peer: peer.ms };
  });
  compare(pairs, 20);
}

/** A block of ten moves between two others, with a tie and two moves that come after others. */
function blockOf(seed: number): Plan {
  const dice = new Dice(seed);
  const inside = Array.from({ length: 10 }, (_, i) =>
    item(`i${i}`, dice, i === 4 || i === 5 ? { keep: "t" } : i === 2 || i === 8 ? { after: [`i${i - 2}`] } : {}),
  );
  const heading = (id: string) => ({ id, kind: "heading" as const, title: id });
  const items = [item("above", dice), heading("block"), ...inside, heading("next"), item("below", dice)];
  return { ...longClass(1, 0), moves: { ...STARTER_MOVES }, items };
}

function orderModel(plan: Plan): OrderModel {
  const moves = plan.items.flatMap((it) => (it.kind === "move" ? [it] : []));
  const items = moves.slice(1, -1);
  const seconds = [...items, moves[0]].map((a) =>
    [...items, moves.at(-1)].map((b) => {
      const [before, after] = [a && setupOf(plan, a), b && setupOf(plan, b)];
      return before && after ? estimateSeconds(plan, before, after) : 0;
    }),
  );
  return { items, seconds };
}

function order(): void {
  console.log("order of a block of ten moves with ties and waits, beside HiGHS on the same problem");
  const pairs = Array.from({ length: 10 }, (_, i): Pair => {
    const plan = blockOf(i + 1);
    const lp = orderLp(orderModel(plan));
    for (let warm = 0; warm < 20; warm++) bestOrder(plan, "block");
    const own = taken(() => bestOrder(plan, "block"));
    const peer = taken(() => highs.solve(lp, EXACT));
    const best = Math.round(peer.value.ObjectiveValue);
    if (!own.value.ok || own.value.after !== best) throw new Error(`block ${i}: not ${best} s`);
    return { own: own.ms, peer: peer.ms };
  });
  compare(pairs, 20);
}

/** Other words in the first set-up line of one move. */
function afterOneKey(plan: Plan, n: number): Plan {
  const items = plan.items.map((it, i) => {
    if (i !== n || it.kind !== "move") return it;
    const script = (it.script ?? []).map((line, at) => (at === 0 ? { ...line, text: `${line.text}o` } : line));
    return { ...it, script };
  });
  return { ...plan, items };
}

function acts(): void {
  console.log("what the set-ups of a class of 60 items and 400 lines tell, for the first time and after one key");
  const classes = Array.from({ length: 100 }, () => longClass(60, 400));
  // No class is known, but the code has been run, as in a server or page that is open.
  for (const plan of classes.slice(0, 50)) planActs(plan);
  const cold = spread(classes.slice(50).map((plan) => taken(() => planActs(plan)).ms));
  const [plan] = classes.slice(-1);
  const keys = plan
    ? Array.from({ length: 300 }, (_, n) => afterOneKey(plan, n % 60)).map((next) => taken(() => planActs(next)).ms)
    : [];
  const key = spread(keys.slice(100));
  for (const [what, { p50, p99 }] of [
    ["first time", cold],
    ["after one key", key],
  ] as const)
    console.log(`  ${what} p50 ${p50.toFixed(2)} ms, p99 ${p99.toFixed(2)} ms`);
  target("ms for the first time, p50", cold.p50, { atMost: 5 });
  target("ms after one key, p50", key.p50, { atMost: 0.2 });
}

/** Milliseconds for reading and then for every command. */
function through(file: DamagedFile): { readonly ms: number; readonly most: string } {
  const read = taken(() => readPlanBytes(file.bytes));
  const parts = [{ name: "read", ms: read.ms }];
  if (read.value.ok) {
    const { plan } = read.value;
    const asked = plan.items.find((it) => it.kind === "heading")?.id;
    for (const name of COMMAND_NAMES)
      parts.push({ name, ms: taken(() => JSON.stringify(runPlanCommand(name, plan, asked))).ms });
  }
  const slowest = parts.reduce((a, b) => (b.ms > a.ms ? b : a));
  return { ms: slowest.ms, most: slowest.name };
}

function files(what: string, list: Iterable<DamagedFile>): void {
  const all = [...list].map((file) => ({ file, ...through(file) })).sort((a, b) => b.ms - a.ms);
  console.log(`slowest of ${all.length} files ${what}, by their slowest act (200 ms is the aim)`);
  for (const { file, ms, most } of all.slice(0, 5))
    console.log(`  ${ms.toFixed(0).padStart(5)} ms ${most}: ${file.what}, ${(file.bytes.length / 1000).toFixed(0)} kB`);
}

fits();
order();
acts();
files("damaged at random", damagedFiles(10_000_019, 10_000));
files("made to be slow", worstFiles());
process.exit(allMet ? 0 : 1);
