/**
 * Fit to length written for general-purpose solvers, straight from the plan file format and independent of
 * `lib/fit`: every value an item may take, which items must be equal, and the sum they must have.
 */
import { classClock } from "#lib/clock/clock.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";

export interface FitModel {
  readonly items: readonly ModelItem[];
  /** Places of items that must get the same. */
  readonly equal: readonly (readonly [number, number])[];
  /** The least and the most that the values may add up to; undefined when the fixed part exceeds the class. */
  readonly target: readonly [number, number] | undefined;
  /** The cost of items that follow a locked other side, paid whatever is chosen. */
  readonly fixedCost: number;
}

export interface ModelItem {
  readonly id: string;
  readonly wish: number;
  readonly values: readonly number[];
  /** Seconds of one repetition, null for a hold. */
  readonly rep: number | null;
}

const isMove = (item: PlanItem): item is MoveItem => item.kind === "move";

export function fitModel(plan: Plan): FitModel {
  const grid = plan.gridSeconds ?? 5;
  const moves = plan.items.filter(isMove);
  const partner = partners(moves);
  const locked = new Map<string, number>();
  for (const item of moves) {
    const other = partner.get(item);
    if (item.locked) locked.set(item.id, item.seconds);
    else if (other?.locked) locked.set(item.id, other.seconds);
  }
  const open = moves.filter((item) => !locked.has(item.id));
  const place = new Map(open.map((item, i) => [item, i]));
  const equal = open.flatMap((item, i): [number, number][] => {
    const j = place.get(partner.get(item) ?? item) ?? i;
    return j > i ? [[i, j]] : [];
  });
  const work = moves.reduce((sum, item) => sum + item.seconds, 0);
  const lockedWork = [...locked.values()].reduce((a, b) => a + b, 0);
  const rest = round(plan.lengthSeconds - (classClock(plan).total - work + lockedWork));
  return {
    items: open.map((item) => ({
      id: item.id,
      wish: item.seconds,
      values: valuesOf(plan, item, Math.max(rest, 0)),
      rep: repOf(plan, item),
    })),
    equal,
    target: rest < 0 ? undefined : [round(Math.floor(rest) - (grid - 1)), rest],
    fixedCost: moves
      .filter((item) => !item.locked && locked.has(item.id))
      .reduce((sum, it) => sum + costOf(it.seconds, locked.get(it.id) ?? it.seconds, repOf(plan, it)), 0),
  };
}

/** First left with first right of the same move, and so on. */
function partners(moves: readonly MoveItem[]): Map<MoveItem, MoveItem> {
  const found = new Map<MoveItem, MoveItem>();
  for (const left of moves.filter((item) => item.side === "left")) {
    const turn = moves.filter((item) => item.move === left.move && item.side === "left").indexOf(left);
    const right = moves.filter((item) => item.move === left.move && item.side === "right")[turn];
    if (right) found.set(left, right).set(right, left);
  }
  return found;
}

function valuesOf(plan: Plan, item: MoveItem, most: number): number[] {
  const grid = plan.gridSeconds ?? 5;
  const [low, high] = item.range ?? plan.moves[item.move]?.seconds ?? [item.seconds / 2, item.seconds * 1.5];
  const values: number[] = [];
  for (let n = Math.ceil(round(low / grid)); round(n * grid) <= Math.min(high, most); n++) values.push(round(n * grid));
  const rep = repOf(plan, item);
  for (let k = 1; rep !== null && Math.round(round(k * rep)) <= Math.min(high, most); k++)
    if (Math.round(round(k * rep)) >= low) values.push(Math.round(round(k * rep)));
  return [...new Set(values)].sort((a, b) => a - b);
}

/** One tempo cycle; null for a hold. */
export function repOf(plan: Plan, item: MoveItem): number | null {
  const tempo = plan.moves[item.move]?.tempo;
  if (!tempo || "holdSeconds" in tempo) return null;
  const rep = tempo.outSeconds + (tempo.outHoldSeconds ?? 0) + tempo.backSeconds + (tempo.backHoldSeconds ?? 0);
  return round(rep);
}

const round = (x: number): number => Math.round(x * 1e6) / 1e6;

/** As in the format: (d - wish)^2 / wish, plus 2 when d is more than 0.5 s from a multiple of rep. */
export function costOf(wish: number, seconds: number, rep: number | null): number {
  const off = rep === null ? 0 : Math.min(seconds % rep, rep - (seconds % rep));
  return (seconds - wish) ** 2 / wish + (off > 0.5 + 1e-9 ? 2 : 0);
}

/** In CPLEX LP format: one binary per item and value. Empty when some item has no possible value. */
export function fitLp(model: FitModel): string {
  const { items, equal, target } = model;
  if (target === undefined || items.some((item) => item.values.length === 0)) return "";
  const terms = (i: number, factor: (value: number) => number): string[] =>
    (items[i]?.values ?? []).map((value, k) => `${signed(factor(value))} x${i}_${k}`);
  const all = items.map((_, i) => i);
  const ones = all.map((i) => `one${i}: ${terms(i, () => 1).join("\n")} = 1`);
  const pairs = equal.map(([a, b], i) => {
    return `pair${i}: ${[...terms(a, (v) => v), ...terms(b, (v) => -v)].join("\n")} = 0`;
  });
  const costs = all.flatMap((i) => terms(i, (value) => costOf(items[i]?.wish ?? 1, value, items[i]?.rep ?? null)));
  const total = all.flatMap((i) => terms(i, (value) => value));
  const names = all.flatMap((i) => (items[i]?.values ?? []).map((_, k) => `x${i}_${k}`));
  return [
    `Minimize\nobj: ${costs.join("\n")}`,
    `Subject To\nleast: ${total.join("\n")} >= ${target[0]}\nmost: ${total.join("\n")} <= ${target[1]}`,
    ...ones,
    ...pairs,
    `Binaries\n${names.join("\n")}\nEnd`,
  ].join("\n");
}

const signed = (x: number): string => (x < 0 ? `- ${(-x).toFixed(12)}` : `+ ${x.toFixed(12)}`);
