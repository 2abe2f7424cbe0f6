/** What is drawn of the change into an item: its steps with what the words say of each, and what can be written. Pure. */
import { readOut, stepWords } from "#lib/acts/act-words.ts";
import { changeTold, type HeardAct } from "#lib/acts/plan-acts.ts";
import { type StepState, stepsOf } from "#lib/acts/steps.ts";
import { setupLinesOf } from "#lib/acts/told-lines.ts";
import { sentenceCase } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { completeSetup } from "#lib/remedies/setup-lines.ts";
import { walkSetups } from "#lib/transitions/walk.ts";

export interface StepView {
  readonly key: string;
  /** "Face the back". */
  readonly words: string;
  readonly state: StepState;
  readonly heard: HeardAct | null;
}

export interface StepsView {
  readonly steps: readonly StepView[];
  readonly besides: readonly HeardAct[];
  /** Every step is said as planned, and nothing else. */
  readonly allSaid: boolean;
  /** What one press would write, and what to know before it; null where nothing is missing. */
  readonly offer: { readonly lines: readonly string[]; readonly note?: string; readonly isFirst: boolean } | null;
}

/** Null where there is no change and nothing is said of one. */
export function stepsView(plan: Plan, itemId: string): StepsView | null {
  const step = walkSetups(plan).find(({ item }) => item.id === itemId);
  if (!step) return null;
  const { steps, besides } = stepsOf(changeTold(plan, step));
  const fix = completeSetup(plan, step);
  if (steps.length === 0 && besides.length === 0 && !fix) return null;
  const ends = { from: step.before?.setup ?? null, to: step.to };
  const { item } = step;
  const lines = (fix?.changes ?? []).flatMap(({ value }) =>
    typeof value === "object" && "text" in value ? [readOut(plan, item, String(value.text))] : [],
  );
  return {
    steps: steps.map(({ act, state, heard }) => ({
      key: "spring" in act ? `${act.act} ${act.spring}` : act.act,
      words: sentenceCase(stepWords(plan, act, ends)),
      state,
      heard,
    })),
    besides,
    allSaid: steps.length > 0 && besides.length === 0 && steps.every(({ state }) => state === "told"),
    offer: fix && { lines, isFirst: setupLinesOf(item).length === 0, ...(fix.note ? { note: fix.note } : {}) },
  };
}
