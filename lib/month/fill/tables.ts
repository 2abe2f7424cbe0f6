/** Parts with the same slots put together, and small ones worked out beforehand for every choice. */
import type { CostPart, Picks } from "./parts.ts";
import { product } from "./problem.ts";

/** Larger parts are asked as they are. */
const TABLE_MOST = 20_000;

export interface Term {
  readonly scope: readonly number[];
  readonly cost: (picks: Picks) => number;
  /** The least cost once the first k slots of the scope are chosen, for k from 0; none for a part that is too large. */
  readonly least: readonly Float64Array[] | undefined;
}

export function termsOf(parts: readonly CostPart[], sizes: readonly number[]): Term[] {
  const byScope = new Map<string, CostPart[]>();
  for (const part of parts) {
    const key = part.scope.join();
    const same = byScope.get(key);
    if (same) same.push(part);
    else byScope.set(key, [part]);
  }
  return [...byScope.values()].map((same) => termOf(same, sizes));
}

function termOf(same: readonly CostPart[], sizes: readonly number[]): Term {
  const scope = same[0]?.scope ?? [];
  const own = scope.map((i) => sizes[i] ?? 1);
  const direct = (picks: Picks): number => {
    let sum = 0;
    for (const part of same) sum += part.cost(picks);
    return sum;
  };
  if (product(own) > TABLE_MOST) return { scope, cost: direct, least: undefined };
  const table = tabulated(direct, scope, sizes);
  const least = [table];
  for (let k = own.length - 1; k >= 0; k--) least.unshift(leastOver(least[0] as Float64Array, own[k] ?? 1));
  return { scope, least, cost: (picks) => table[placeIn(scope, sizes, picks)] ?? 0 };
}

function placeIn(scope: readonly number[], sizes: readonly number[], picks: Picks): number {
  let place = 0;
  for (let k = 0; k < scope.length; k++) {
    const i = scope[k] ?? 0;
    place = place * (sizes[i] ?? 1) + (picks[i] ?? 0);
  }
  return place;
}

/** In the order of choices, the last slot's changing first. */
export function tabulated(
  cost: (picks: Picks) => number,
  scope: readonly number[],
  sizes: readonly number[],
): Float64Array {
  const picks = new Int32Array(sizes.length);
  const table = new Float64Array(product(scope.map((i) => sizes[i] ?? 1)));
  for (let at = 0; at < table.length; at++) {
    table[at] = cost(picks);
    for (let k = scope.length - 1; k >= 0; k--) {
      const i = scope[k] ?? 0;
      picks[i] = ((picks[i] ?? 0) + 1) % (sizes[i] ?? 1);
      if (picks[i] !== 0) break;
    }
  }
  return table;
}

function leastOver(table: Float64Array, size: number): Float64Array {
  const least = new Float64Array(table.length / size).fill(Number.POSITIVE_INFINITY);
  for (let at = 0; at < table.length; at++) {
    const to = Math.floor(at / size);
    least[to] = Math.min(least[to] ?? 0, table[at] ?? 0);
  }
  return least;
}
