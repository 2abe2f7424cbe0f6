/** The changes into a move as findings word them. */
import { type SetupChange, setupChanges } from "#lib/cues/changes.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { SetupStep } from "#lib/transitions/walk.ts";

/** "take off one firm", "put on one middle": the changes of these kinds, in the order in which they are made. */
export const changeList = (plan: Plan, { before, item }: SetupStep, kinds: readonly SetupChange["kind"][]): string[] =>
  setupChanges(plan, before?.item, item)
    .filter(({ kind }) => kinds.includes(kind))
    .map(({ words }) => words);
