/**
 * Where the slips of the margin stand. Each would like to be at the height of what it is about; none may cover
 * another; their order is kept. The answer moves them as little as can be: it is the exact minimum of the weighted sum
 * of squared displacements under these constraints (isotonic regression by pooling neighbours, a method published by
 * Ayer and others in 1955; from memory), then held at the upper edge, which keeps it the minimum.
 */
export interface SlipWish {
  readonly id: string;
  /** Where its top would like to be, in pixels from the margin's top. */
  readonly at: number;
  /** Pixels, 0 or more. */
  readonly height: number;
  /** How much its own wish counts against the others': above 0, 1 when left out. */
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
 * Tops for slips in the order given, `gap` pixels apart at least and none above `edge`. Same length and order as the
 * wishes. Slips whose wishes do not collide stand exactly where they wish.
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

/** What stands above each slip when all are pushed together: turns "no overlap" into "not descending". */
function offsetsOf(wishes: readonly SlipWish[], gap: number): number[] {
  let above = 0;
  return wishes.map((wish) => {
    const mine = above;
    above += Math.max(0, wish.height) + gap;
    return mine;
  });
}

const mean = (pool: Pool): number => pool.sum / pool.weight;
