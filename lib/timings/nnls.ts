/**
 * Non-negative least squares: the x >= 0 that minimises |A x - b|. The active-set method of Lawson and Hanson, "Solving
 * Least Squares Problems" (1974), chapter 23, on the normal equations: systems here have a dozen unknowns, and the caller
 * keeps them well conditioned.
 */

export interface LeastSquares {
  readonly x: readonly number[];
  /** |A x - b|. */
  readonly residual: number;
}

/** A smaller gain is rounding. */
const NOTHING = 1e-10;

/** `rows`: those of A, all of one length; `b`: one number per row. Without rows or columns x is all zero. */
export function nnls(rows: readonly (readonly number[])[], b: readonly number[]): LeastSquares {
  const n = rows[0]?.length ?? 0;
  const gram = product(rows, n);
  const right = Array.from({ length: n }, (_, j) => rows.reduce((sum, row, i) => sum + at(row, j) * at(b, i), 0));
  const free = new Set<number>();
  let x = new Array<number>(n).fill(0);
  // Every round frees one unknown and lowers the residual, so no set of unknowns comes twice.
  for (let round = 0; round < 3 * n + 10; round++) {
    const gain = right.map((r, j) => (free.has(j) ? 0 : r - dot(gram[j] ?? [], x)));
    const best = gain.reduce((k, g, j) => (g > (gain[k] ?? 0) ? j : k), 0);
    if (n === 0 || (gain[best] ?? 0) <= NOTHING * Math.max(1, ...right.map(Math.abs))) break;
    free.add(best);
    x = within(gram, right, free, x);
  }
  return { x, residual: Math.hypot(...rows.map((row, i) => dot(row, x) - at(b, i))) };
}

/** Least squares over the free unknowns. Those that would turn negative go back to zero, one step at a time. */
function within(
  gram: readonly (readonly number[])[],
  right: readonly number[],
  free: Set<number>,
  before: readonly number[],
): number[] {
  let x = [...before];
  while (free.size > 0) {
    const unknowns = [...free].sort((a, b) => a - b);
    const solved = solveSystem(
      unknowns.map((i) => unknowns.map((j) => at(gram[i] ?? [], j))),
      unknowns.map((i) => at(right, i)),
    );
    const target = new Array<number>(x.length).fill(0);
    unknowns.forEach((j, k) => {
      target[j] = at(solved, k);
    });
    const blocked = unknowns.filter((j) => at(target, j) <= 0);
    if (blocked.length === 0) return target;
    const step = Math.min(...blocked.map((j) => at(x, j) / (at(x, j) - at(target, j) || 1)));
    x = x.map((value, j) => value + step * (at(target, j) - value));
    for (const j of blocked) {
      if (at(x, j) > NOTHING) continue;
      x[j] = 0;
      free.delete(j);
    }
  }
  return x.map(() => 0);
}

/** Solves a symmetric positive definite system by Gaussian elimination with pivoting; a singular unknown becomes 0. */
export function solveSystem(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const n = right.length;
  const m = matrix.map((row, i) => [...row, at(right, i)]);
  for (let col = 0; col < n; col++) {
    const pivot = m.reduce(
      (p, row, i) => (i >= col && Math.abs(at(row, col)) > Math.abs(at(m[p] ?? [], col)) ? i : p),
      col,
    );
    [m[col], m[pivot]] = [m[pivot] ?? [], m[col] ?? []];
    const top = m[col] ?? [];
    if (Math.abs(at(top, col)) < 1e-14) continue;
    for (const [i, row] of m.entries()) {
      if (i === col) continue;
      const factor = at(row, col) / at(top, col);
      for (let j = col; j <= n; j++) row[j] = at(row, j) - factor * at(top, j);
    }
  }
  return m.map((row, i) => (Math.abs(at(row, i)) < 1e-14 ? 0 : at(row, n) / at(row, i)));
}

function product(rows: readonly (readonly number[])[], n: number): number[][] {
  return Array.from({ length: n }, (_, j) =>
    Array.from({ length: n }, (_, k) => rows.reduce((sum, row) => sum + at(row, j) * at(row, k), 0)),
  );
}

const at = (list: readonly number[], i: number): number => list[i] ?? 0;
const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, v, i) => sum + v * at(b, i), 0);
