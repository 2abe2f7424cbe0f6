/** A fill slot by slot, for a reader: the next best choices, and what they would bring. */
import { plural } from "#lib/plan/format.ts";
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
  /** "Fri 20 Mar 18:00: Arms, chest. Next best Trunk, as good; Upper, trunk, 1 finding more: ..." */
  readonly text: string;
}

interface ExplainedChoice {
  readonly plan: string | null;
  /** Cost against that of the fill; below 0 only where the fill is not proven. */
  readonly more: number;
  /** Findings that this choice would bring and that it would spare, as `check` orders them. */
  readonly brings: readonly MonthFinding[];
  readonly spares: readonly MonthFinding[];
  /** How it compares: "as good", "2 findings more, 1 fewer: Evening regulars rest ...", without a full stop. */
  readonly words: string;
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
      const choice = { plan: other.plan, more, brings: without(found, held), spares: without(held, found) };
      const wished = month.fill?.wishes?.some((wish) => wish.slot === slot && wish.plan === plan) ?? false;
      return { ...choice, words: comparedWords(choice, wished) };
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

/** A difference that is smaller is none to a reader. */
const LEAST = 0.05;

/** What costs more without a finding is a wish not met, or classes in a row that are more alike. */
function comparedWords({ plan, more, brings, spares }: Omit<ExplainedChoice, "words">, wished: boolean): string {
  if (more < LEAST) return more > -LEAST ? "as good" : "better";
  const [first] = brings;
  if (!first) return wished ? "not the plan wished for" : "more like the classes around it";
  const fewer = spares.length > 0 ? `, ${spares.length} fewer` : "";
  const found = `${plural(brings.length, "finding")} more${fewer}`;
  return plan === null ? found : `${found}: ${first.message.replace(/\.$/, "")}`;
}

function nextBest(month: MonthFile, others: readonly ExplainedChoice[]): string {
  const told = others.map(({ plan, words }) => `${titleOf(month, plan)}, ${words}`);
  return told.length > 0 ? ` Next best ${told.join("; ")}.` : "";
}
