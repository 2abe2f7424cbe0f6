/**
 * Non-negative least squares against answers published with it (the documentation of scipy.optimize.nnls; the lsqnonneg
 * reference page of MathWorks, its rounded answer recomputed) and against a quadratic program solved by `quadprog`.
 */
import { readFileSync } from "node:fs";
import { solveQP } from "quadprog";
import { describe, expect, it } from "vitest";
import { seededRandom } from "#lib/order/random.ts";
import { nnls } from "#lib/timings/nnls.ts";

interface Published {
  readonly cases: readonly { A: number[][]; b: number[]; x: number[]; rnorm: number }[];
}
const published: Published = JSON.parse(readFileSync(new URL("../fixtures/nnls.json", import.meta.url), "utf8"));

describe("non-negative least squares", () => {
  it.each(published.cases)("published answer %#", ({ A, b, x, rnorm }) => {
    const answer = nnls(A, b);
    answer.x.forEach((value, i) => {
      expect(value).toBeCloseTo(x[i] ?? Number.NaN, 9);
    });
    expect(answer.residual).toBeCloseTo(rnorm, 9);
  });

  it("finds the same as a quadratic program on 200 random problems", () => {
    const random = seededRandom(20261125);
    for (let n = 0; n < 200; n++) {
      const columns = 1 + Math.floor(random() * 8);
      const rows = Array.from({ length: columns + Math.floor(random() * 12) }, () =>
        Array.from({ length: columns }, () => random() * 4 - 1),
      );
      const b = rows.map(() => random() * 6 - 2);
      const own = nnls(rows, b);
      const other = byQuadraticProgram(rows, b);
      expect(Math.min(...own.x)).toBeGreaterThanOrEqual(0);
      expect(own.residual, `problem ${n}`).toBeCloseTo(norm(rows, b, other), 6);
    }
  });

  it("has an answer for an empty problem", () => {
    expect(nnls([], [])).toEqual({ x: [], residual: 0 });
  });
});

/** min 1/2 x'Dx - d'x with x >= 0; the package counts from 1, as the Fortran it was made from. */
function byQuadraticProgram(rows: number[][], b: number[]): number[] {
  const n = rows[0]?.length ?? 0;
  const one = <T>(list: T[]): T[] => [undefined as T, ...list];
  const gram = Array.from({ length: n }, (_, j) =>
    Array.from({ length: n }, (_, k) =>
      rows.reduce((s, row) => s + (row[j] ?? 0) * (row[k] ?? 0), j === k ? 1e-12 : 0),
    ),
  );
  const right = Array.from({ length: n }, (_, j) => rows.reduce((s, row, i) => s + (row[j] ?? 0) * (b[i] ?? 0), 0));
  const identity = gram.map((_, j) => gram.map((_, k) => Number(j === k)));
  const { solution } = solveQP(one(gram.map(one)), one(right), one(identity.map(one)), one(new Array(n).fill(0)));
  return solution.slice(1).map((x: number) => Math.max(0, x));
}

const norm = (rows: number[][], b: number[], x: number[]): number =>
  Math.hypot(...rows.map((row, i) => row.reduce((s, a, j) => s + a * (x[j] ?? 0), 0) - (b[i] ?? 0)));
