/** A fill slot by slot, for a reader: what the next best choices would cost more, and what they would bring. */
import { own } from "#lib/plan/lookup.ts";
import { dateWords } from "../define/words.ts";
import type { MonthFile, MonthFinding } from "../types.ts";
import { COST_UNIT, type FillAnswer } from "./fill-types.ts";
import { whyNoPlanFits } from "./open-slots.ts";
import { fillProblem, picksOfAnswer } from "./problem.ts";

export interface ExplainedSlot {
  readonly slot: string;
  /** Null: left empty. */
  readonly plan: string | null;
  /** The next best, with everything else held; at most three. */
  readonly others: readonly ExplainedChoice[];
  /** "Fri 20 Mar 18:00: Arms, chest. Next best Trunk, +0.4; Upper, trunk, +11.4: ..." */
  readonly text: string;
}

interface ExplainedChoice {
  readonly plan: string | null;
  /** Cost against that of the fill; below 0 only where the fill is not proven. */
  readonly more: number;
  /** Findings that this choice would bring and that it would spare, as `check` orders them. */
  readonly brings: readonly MonthFinding[];
  readonly spares: readonly MonthFinding[];
}

/** `answer` must be the fill of this month. */
export function explainFill(month: MonthFile, answer: FillAnswer): ExplainedSlot[] {
  const problem = fillProblem(month);
  const picks = picksOfAnswer(problem, answer);
  const held = problem.look(picks).findings;
  return problem.open.map(({ one, choices }, i) => {
    const { slot, plan, others } = answer.slots[i] ?? { slot: one.id, plan: null, others: [] };
    const explained = others.map((other): ExplainedChoice => {
      const tried = picks.slice();
      tried[i] = choices.indexOf(other.plan);
      const found = problem.look(tried).findings;
      const more = Math.round((other.cost - answer.after) * COST_UNIT) / COST_UNIT;
      return { plan: other.plan, more, brings: without(found, held), spares: without(held, found) };
    });
    const when = `${dateWords(one.date)} ${one.slot.start}`;
    const next = choices.length === 1 ? ` ${whyNoPlanFits(month, one)}` : nextBest(month, explained);
    return { slot, plan, others: explained, text: `${when}: ${titleOf(month, plan)}.${next}` };
  });
}

function without(findings: readonly MonthFinding[], others: readonly MonthFinding[]): MonthFinding[] {
  const ids = new Set(others.map(({ id }) => id));
  return findings.filter(({ id }) => !ids.has(id));
}

const titleOf = (month: MonthFile, plan: string | null): string =>
  plan === null ? "left empty" : (own(month.plans, plan)?.title ?? plan);

const DECIMALS = 10;

function nextBest(month: MonthFile, others: readonly ExplainedChoice[]): string {
  const told = others.map(({ plan, more, brings }) => {
    const cost = Math.round(more * DECIMALS) / DECIMALS;
    const what = `${titleOf(month, plan)}, ${cost < 0 ? "" : "+"}${cost}`;
    return brings[0] ? `${what}: ${brings[0].message.replace(/\.$/, "")}` : what;
  });
  return told.length > 0 ? ` Next best ${told.join("; ")}.` : "";
}
