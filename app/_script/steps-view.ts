/** What is drawn of the change into an item: its steps with what the words say of each, and what can be written. Pure. */
import { readOut, stepWords } from "#lib/acts/act-words.ts";
import { changeTold, type HeardAct } from "#lib/acts/plan-acts.ts";
import { type StepState, stepsOf } from "#lib/acts/steps.ts";
import { actLetGoEarly, setupLinesOf } from "#lib/acts/told-lines.ts";
import { sentenceCase } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { setupToWrite } from "#lib/remedies/setup-lines.ts";
import { type SetupStep, walkSetups } from "#lib/transitions/walk.ts";

export interface StepView {
  readonly key: string;
  /** "Face the back". */
  readonly words: string;
  readonly state: StepState;
  readonly heard: HeardAct | null;
}

export interface SetupOffer {
  readonly lines: readonly string[];
  /** To know before it is taken. */
  readonly note?: string;
  /** No set-up line is there yet. */
  readonly isFirst: boolean;
  /** The lines that are there have another order, so the whole set-up goes before them. */
  readonly isWhole: boolean;
}

export interface StepsView {
  readonly steps: readonly StepView[];
  readonly besides: readonly HeardAct[];
  /** Every step is said as planned, and nothing else. */
  readonly allSaid: boolean;
  /** What one press would write; null where nothing is missing, be it in another order. */
  readonly offer: SetupOffer | null;
}

/** Null where there is no change, nothing is said of one and nothing can be written. */
export function stepsView(plan: Plan, itemId: string): StepsView | null {
  const step = walkSetups(plan).find(({ item }) => item.id === itemId);
  if (!step) return null;
  const { steps: all, besides } = stepsOf(changeTold(plan, step));
  const offer = offerOf(plan, step);
  if (all.length === 0 && besides.length === 0 && !offer) return null;
  const ends = { from: step.before?.setup ?? null, to: step.to };
  const early = actLetGoEarly(plan, step);
  const steps = all.map(({ act, state, heard }) => ({
    key: "spring" in act ? `${act.act} ${act.spring}` : act.act,
    words: sentenceCase(stepWords(plan, act, ends)),
    state: act.act === early && state === "told" ? ("wrong-order" as const) : state,
    heard,
  }));
  const allSaid = steps.length > 0 && besides.length === 0 && steps.every(({ state }) => state === "told");
  return { steps, besides, allSaid, offer };
}

function offerOf(plan: Plan, step: SetupStep): SetupOffer | null {
  const fix = setupToWrite(plan, step);
  if (!fix) return null;
  const lines = fix.changes.flatMap(({ value }) =>
    typeof value === "object" && "text" in value ? [sentenceCase(readOut(plan, step.item, String(value.text)))] : [],
  );
  const isFirst = setupLinesOf(step.item).length === 0;
  return { lines, isFirst, isWhole: fix.note !== undefined, ...(fix.note ? { note: fix.note } : {}) };
}
