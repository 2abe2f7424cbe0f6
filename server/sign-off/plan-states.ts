/** The states of a plan: in writing, offered for reading, returned with notes or signed off, and the steps between them. */

import * as z from "zod";
import { addPlanEvent, type PlanEventKind } from "#db/repos/event-repo.ts";
import { type PlanRow, type StateChange, setPlanState } from "#db/repos/plan-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import type { PlanState } from "#lib/protocol/messages.ts";
import { MOST_POINTS, POINT_MAX } from "#lib/rounds/rounds.ts";
import { fail, ok, type Result } from "#server/base/result.ts";
import { typedText } from "#server/base/typed-text.ts";
import type { Springline } from "#server/context/springline.ts";
import { announceState } from "#server/news/plan-news.ts";

const NOTE_MAX = 4000;
const note = typedText.max(NOTE_MAX, `A note has at most ${NOTE_MAX} characters.`);
export const optionalNoteSchema = z.strictObject({ note: note.optional() });
export const requiredNoteSchema = z.strictObject({
  note: note.min(1, "Write a note that says what has to change."),
});
/** The round that the lead had before them when they wrote. A program that sends none is not asked. */
const round = z.int().min(1).optional();
/** What goes with a sign-off besides the plan itself. */
export const roundNoteSchema = optionalNoteSchema.extend({ round });
export const returnSchema = requiredNoteSchema.extend({
  round,
  mainPoints: z
    .array(
      typedText.min(1, "A main point needs words.").max(POINT_MAX, `A main point has at most ${POINT_MAX} characters.`),
    )
    .max(MOST_POINTS, `A return has at most ${MOST_POINTS} main points.`)
    .optional(),
});

/** As in "The plan is offered for reading." */
const STATE_WORDS: Record<PlanState, string> = {
  "in-writing": "in writing",
  "handed-in": "offered for reading",
  "handed-back": "returned with notes",
  "signed-off": "signed off",
};

/** Errors: 409 wrong-state. `needed` is the sentence that says which state is required. */
export function expectState(row: PlanRow, allowed: readonly PlanState[], needed: string): Result<null> {
  if (allowed.includes(row.state)) return ok(null);
  return fail(409, "wrong-state", `The plan is ${STATE_WORDS[row.state]}. ${needed}`, { state: row.state });
}

export interface PlanStep extends StateChange {
  readonly actorId: string;
  readonly event: PlanEventKind;
  readonly hash?: string;
}

/**
 * Stores a step with its line in the record, then tells everybody who has the plan or its month open. `within` belongs to the
 * step: it is stored with it or not at all.
 */
export function takeStep(app: Springline, id: string, step: PlanStep, within: () => void): void {
  inTransaction(app.db, () => {
    storeStep(app, id, step);
    within();
  });
  announceState(app, id);
}

/** The same inside the caller's transaction; the caller announces. */
export function storeStep(app: Pick<Springline, "db" | "now">, id: string, step: PlanStep): void {
  const { actorId, event, hash, ...change } = step;
  setPlanState(app.db, id, change);
  addPlanEvent(app.db, { planId: id, at: app.now(), actorId, kind: event, note: change.note, hash: hash ?? null });
}
