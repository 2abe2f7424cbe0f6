/** Fills the empty slots of a month with the plans that cost least together. Pure: one month, one answer. */
import type { MonthFile } from "../types.ts";
import { COST_UNIT, type FillAnswer, type FilledSlot } from "./fill-types.ts";
import { byCode } from "./open-slots.ts";
import type { Picks } from "./parts.ts";
import { emptyPicks, type FillProblem, fillProblem, isAllowed, withPlans } from "./problem.ts";
import { type FoundFill, searchFill } from "./search.ts";
import { type Term, termsOf } from "./tables.ts";

/** Proven up to `EXACT_MOST` choices; above that the best found. */
export function fillMonth(month: MonthFile): FillAnswer {
  const problem = fillProblem(month);
  return answerOf(problem, searchFill(problem));
}

/** The month with the plans of the answer, as `month fill` prints it: `fill` is the answer. */
export function filledMonth(
  month: MonthFile,
  answer: FillAnswer,
): Omit<MonthFile, "fill"> & { readonly fill: FillAnswer } {
  const problem = fillProblem(month);
  const picks = problem.open.map(({ choices }, i) => choices.indexOf(answer.slots[i]?.plan ?? null));
  return { ...withPlans(month, problem.open, Int32Array.from(picks)), fill: answer };
}

export function answerOf(problem: FillProblem, { picks, cost, proven, bound }: FoundFill): FillAnswer {
  const empty = emptyPicks(problem.sizes);
  const ids = (of: Picks): string[] => problem.look(of).findings.map(({ id }) => id);
  const [was, is] = [new Set(ids(empty)), new Set(ids(picks))];
  return {
    before: problem.costOf(empty) / COST_UNIT,
    after: cost / COST_UNIT,
    proven,
    bound: bound / COST_UNIT,
    slots: slotsOf(problem, picks, cost),
    gone: [...was].filter((id) => !is.has(id)).sort(byCode),
    new: [...is].filter((id) => !was.has(id)).sort(byCode),
  };
}

const MOST_OTHERS = 3;

function slotsOf(problem: FillProblem, picks: Picks, cost: number): FilledSlot[] {
  const terms = termsOf(problem.parts, problem.sizes);
  return problem.open.map(({ one, choices }, i) => {
    const touching = terms.filter(({ scope }) => scope.includes(i));
    const others = othersOf({ problem, touching, picks, cost }, i);
    const named = others.map(({ pick, cost: other }) => ({ plan: choices[pick] ?? null, cost: other / COST_UNIT }));
    return { slot: one.id, plan: choices[picks[i] ?? 0] ?? null, others: named };
  });
}

interface Held {
  readonly problem: FillProblem;
  readonly touching: readonly Term[];
  readonly picks: Picks;
  readonly cost: number;
}

function othersOf({ problem, touching, picks, cost }: Held, slot: number): { pick: number; cost: number }[] {
  const tried = picks.slice();
  const ofTerms = (): number => touching.reduce((sum, term) => sum + term.cost(tried), 0);
  const held = ofTerms();
  const found: { pick: number; cost: number }[] = [];
  for (let pick = 0; pick < (problem.sizes[slot] ?? 0); pick++) {
    tried[slot] = pick;
    if (pick !== picks[slot] && isAllowed(problem.uses, tried)) found.push({ pick, cost: cost - held + ofTerms() });
  }
  return found.sort((a, b) => a.cost - b.cost || a.pick - b.pick).slice(0, MOST_OTHERS);
}
