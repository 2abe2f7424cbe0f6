/** Fills a month as `fillMonth` does, and beyond a million choices asks an integer program for better and for the proof. */
import { answerOf } from "#lib/month/fill/fill.ts";
import type { FillAnswer } from "#lib/month/fill/fill-types.ts";
import type { Picks } from "#lib/month/fill/parts.ts";
import { type FillProblem, fillProblem } from "#lib/month/fill/problem.ts";
import { ProgramMaker } from "#lib/month/fill/program.ts";
import { betterNear, type FoundFill, searchFill } from "#lib/month/fill/search.ts";
import type { MonthFile } from "#lib/month/types.ts";
import { solveProgram, solver } from "./solve.ts";

/** Each adds combinations that the last solution ran into. */
const MOST_ROUNDS = 12;
/** A bound is a sum of many floating-point numbers; costs are whole. */
const BOUND_NOISE = 0.01;

export async function fillAndProve(month: MonthFile): Promise<FillAnswer> {
  const problem = fillProblem(month);
  const found = searchFill(problem);
  return answerOf(problem, found.proven ? found : await proved(problem, found));
}

async function proved(problem: FillProblem, found: FoundFill): Promise<FoundFill> {
  const highs = await solver();
  const maker = new ProgramMaker(problem);
  let best = found;
  for (let round = 0; round < MOST_ROUNDS && !best.proven; round++) {
    const program = maker.made();
    const start = [...best.picks].map((pick, slot) => (program.first[slot] ?? 0) + pick);
    const solved = solveProgram(highs, program, start);
    best = withBound(best, problem.fixed + Math.ceil(solved.bound - BOUND_NOISE));
    if (!solved.values) break;
    const picks = picksIn(problem, program.first, solved.values);
    best = betterNear(problem, best, picks);
    if (!maker.cutOff(picks)) break;
  }
  return best;
}

function withBound(found: FoundFill, bound: number): FoundFill {
  const better = Number.isFinite(bound) ? Math.max(found.bound, bound) : found.bound;
  return { ...found, bound: Math.min(better, found.cost), proven: better >= found.cost };
}

const picksIn = ({ sizes }: FillProblem, first: readonly number[], values: Float64Array): Picks =>
  Int32Array.from(sizes, (size, slot) => {
    const own = values.subarray(first[slot] ?? 0, (first[slot] ?? 0) + size);
    return own.indexOf(Math.max(...own));
  });
