/**
 * Where the slips of the margin go. Each should be level with what it is about; none may cover another; their order is
 * kept. The result moves them as little as possible: it is the exact minimum of the weighted sum of squared
 * displacements under these constraints (isotonic regression by pooling adjacent violators, Ayer and others, 1955;
 * cited from memory), then clamped at the upper edge, which keeps it the minimum.
 */
export interface SlipWish {
  readonly id: string;
  /** Where its top should be, in pixels from the margin's top. */
  readonly at: number;
  /** Pixels, 0 or more. */
  readonly height: number;
  /** How much its wish counts against the others': above 0, default 1. */
  readonly weight?: number;
}
export interface SlipPlace {
  readonly id: string;
  readonly top: number;
}

interface Pool {
  readonly sum: number;
  readonly weight: number;
  readonly count: number;
}

/**
 * Tops for the slips in the given order, at least `gap` pixels apart and none above `edge`. Same length and order as
 * the wishes. Slips whose wishes do not collide go exactly where they wish.
 */
export function placeSlips(wishes: readonly SlipWish[], gap: number, edge = 0): SlipPlace[] {
  const offsets = offsetsOf(wishes, gap);
  const pools: Pool[] = [];
  wishes.forEach((wish, i) => {
    const weight = wish.weight ?? 1;
    let pool: Pool = { sum: weight * (wish.at - (offsets[i] ?? 0)), weight, count: 1 };
    for (let last = pools.at(-1); last !== undefined && mean(last) > mean(pool); last = pools.at(-1)) {
      pools.pop();
      pool = { sum: last.sum + pool.sum, weight: last.weight + pool.weight, count: last.count + pool.count };
    }
    pools.push(pool);
  });
  const levels = pools.flatMap((pool) => Array<number>(pool.count).fill(Math.max(edge, mean(pool))));
  return wishes.map((wish, i) => ({ id: wish.id, top: (levels[i] ?? edge) + (offsets[i] ?? 0) }));
}

/** The height above each slip when all are pushed together: turns "no overlap" into "not descending". */
function offsetsOf(wishes: readonly SlipWish[], gap: number): number[] {
  let above = 0;
  return wishes.map((wish) => {
    const mine = above;
    above += Math.max(0, wish.height) + gap;
    return mine;
  });
}

const mean = (pool: Pool): number => pool.sum / pool.weight;
