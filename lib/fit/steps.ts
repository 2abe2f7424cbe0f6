/**
 * The cost of each further grid step of a class, cheapest first. Costs are separable and convex, so taking steps in this
 * order gives the exact optimum for every total. Costs are compared as exact fractions, never rounded.
 */

/** One length to choose, counted in grid steps: the seconds of one item, or what the two sides of a pair share. */
export interface TickVariable {
  /** In plan order: one, or the two of a pair. */
  readonly spots: readonly TickSpot[];
  readonly low: number;
  readonly high: number;
}
interface TickSpot {
  /** Place among the plan's items. */
  readonly place: number;
  /** What the author wants, in ticks: the smallest unit that holds all of the plan's times as whole numbers. */
  readonly wish: number;
}

/**
 * Taking a variable from `from` to `from + 1` grid steps of length g adds g^2 x (2 from + 1) x sum(1 / wish) - 2 g x spots
 * to the cost. Variables with the same number of spots share the rest, so they order by (2 from + 1) x sum(1 / wish).
 */
export interface GridStep {
  readonly variable: number;
  readonly from: number;
  /** (2 from + 1) x sum(1 / wish), rounded. */
  readonly near: number;
  readonly weight: Weight;
}
/** Sum of 1 / wish over the spots as a fraction: in doubles, exact where they are whole and safe, and exactly. */
interface Weight {
  readonly top: number;
  readonly bottom: number;
  readonly exactTop: bigint;
  readonly exactBottom: bigint;
}

/** Steps in order of cost. `levels[i]` is the same for steps of equal cost and rises with it. */
export interface Ladder {
  readonly variables: readonly TickVariable[];
  readonly steps: readonly GridStep[];
  readonly levels: readonly number[];
}

/** The cheapest `count` steps, plus all that cost as much as the last. Equal ones are in the variables' order. */
export function ladder(variables: readonly TickVariable[], count: number): Ladder {
  const weights = variables.map(weightOf);
  const step = (variable: number, from: number): GridStep | undefined => {
    const weight = weights[variable];
    if (!weight || from >= (variables[variable]?.high ?? 0)) return undefined;
    return { variable, from, near: ((2 * from + 1) * weight.top) / weight.bottom, weight };
  };
  const heap = new Heap(variables.flatMap((v, i) => step(i, v.low) ?? []));
  const steps: GridStep[] = [];
  const levels: number[] = [];
  for (let next = heap.top; next; next = heap.top) {
    const last = steps.at(-1);
    const dearer = last !== undefined && compareSteps(last, next) < 0;
    if (steps.length >= count && (dearer || last === undefined)) break;
    levels.push((levels.at(-1) ?? 0) + Number(dearer));
    steps.push(next);
    heap.replaceTop(step(next.variable, next.from + 1));
  }
  return { variables, steps, levels };
}

/** 1 / a, or 1 / a + 1 / b = (m + n) / (s m n) where a = s m and b = s n; s and m + n may still share a factor. */
function weightOf({ spots }: TickVariable): Weight {
  const [a, b] = spots.map((spot) => spot.wish);
  if (a === undefined || b === undefined) return fraction(1, [a ?? 1]);
  const shared = gcd(a, b);
  const [m, n] = [a / shared, b / shared];
  const rest = gcd(m + n, shared);
  return fraction((m + n) / rest, [shared / rest, m, n]);
}

function fraction(top: number, factors: readonly number[]): Weight {
  const exactBottom = factors.reduce((product, f) => product * BigInt(f), 1n);
  return { top, bottom: factors.reduce((product, f) => product * f, 1), exactTop: BigInt(top), exactBottom };
}

function gcd(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y > 0) [x, y] = [y, x % y];
  return x;
}

/** Doubles after a few operations are exact to about 1e-15, so a larger difference than this decides. */
const DECIDED = 1e-12;

/** The exact sign of a's cost minus b's, both from one ladder. */
function compareSteps(a: GridStep, b: GridStep): number {
  const apart = a.near - b.near;
  if (Math.abs(apart) > DECIDED * (a.near + b.near)) return apart;
  const left = (2 * a.from + 1) * a.weight.top * b.weight.bottom;
  const right = (2 * b.from + 1) * b.weight.top * a.weight.bottom;
  // Products of whole numbers below 2^53 are exact.
  if (Number.isSafeInteger(left) && Number.isSafeInteger(right)) return left - right;
  return sign(exactTop(a) * b.weight.exactBottom - exactTop(b) * a.weight.exactBottom);
}

/** The exact sign of a pair step's cost minus that of two single steps, which add the same time. */
export function compareWithTwo(pair: GridStep, one: GridStep, two: GridStep): number {
  const apart = pair.near - one.near - two.near;
  if (Math.abs(apart) > DECIDED * (pair.near + one.near + two.near)) return apart;
  const bottoms = one.weight.exactBottom * two.weight.exactBottom;
  const tops = exactTop(one) * two.weight.exactBottom + exactTop(two) * one.weight.exactBottom;
  return sign(exactTop(pair) * bottoms - tops * pair.weight.exactBottom);
}

const exactTop = (step: GridStep): bigint => BigInt(2 * step.from + 1) * step.weight.exactTop;
const sign = (x: bigint): number => (x < 0n ? -1 : x > 0n ? 1 : 0);

/** A binary heap of steps, the cheapest on top, of equals the earlier variable's. */
class Heap {
  private readonly list: GridStep[];

  constructor(steps: readonly GridStep[]) {
    this.list = [...steps].sort((a, b) => compareSteps(a, b) || a.variable - b.variable);
  }

  get top(): GridStep | undefined {
    return this.list[0];
  }

  /** Replaces the top with another step, or removes it. */
  replaceTop(step: GridStep | undefined): void {
    const put = step ?? this.list.pop();
    if (put && this.list.length > 0) this.sink(put);
  }

  private sink(step: GridStep): void {
    const { list } = this;
    let at = 0;
    for (;;) {
      let below = 2 * at + 1;
      const left = list[below];
      const right = list[below + 1];
      if (!left) break;
      const least = right && this.before(right, left) ? right : left;
      if (least === right) below++;
      if (!this.before(least, step)) break;
      list[at] = least;
      at = below;
    }
    list[at] = step;
  }

  private before(a: GridStep, b: GridStep): boolean {
    return (compareSteps(a, b) || a.variable - b.variable) < 0;
  }
}
