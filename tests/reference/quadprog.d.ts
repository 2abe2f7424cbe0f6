/** The part of `quadprog` that the tests use: min 1/2 x'Dx - d'x with A'x >= b. Every list begins at place 1. */
declare module "quadprog" {
  export function solveQP(
    D: number[][],
    d: number[],
    A: number[][],
    b?: number[],
    meq?: number,
  ): { solution: number[]; value: number[]; message: string };
}
