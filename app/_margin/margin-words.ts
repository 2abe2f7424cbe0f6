/** The sentences of the margin: findings, threads, offering and returning. Pure. */
import { agree } from "#lib/plan/format.ts";
import type { PlanState } from "#lib/protocol/messages.ts";

export const nothingHere = (moreToCheck: boolean): string =>
  moreToCheck ? "No findings or threads here so far." : "No findings or threads here.";

/** Before the note that came with the plan's last step. */
export const NOTE_WORDS: Readonly<Partial<Record<PlanState, string>>> = {
  "handed-in": "Offered for reading with a note",
  "handed-back": "Returned with notes",
  "signed-off": "Signed off with a note",
};

export const HANDING_IN_TAKEN_BACK = "Taken back. The plan is in writing again.";

export const CHECK_BROKE = "A check could not run";

export const COMMENT_ON_PLAN = "Comment on the plan";
export const COMMENT_ON_CHANGE = "Comment on the change";
/** On a finding that looks again, for a lead. */
export const ACCEPT_AS_IT_IS = "Accept as it is";
export const COMMENT_ON_FINDING = "Comment on this finding";
export const commentOnWords = (name: string): string => `Comment on ${name}`;
/** While somebody writes about it. */
export const FINDING_GONE = "This is not found any more. Your words are kept here, and can still be sent.";
export const COMMENT_SENT = "Comment sent.";

/** While lines are proposed for a move: everything that was found about words that it does not have. */
export const foldedFindings = (count: number): string =>
  agree(count, "No words yet: one finding", `No words yet: ${count} findings`);

export const FIX_ALL = "Fix all of this kind";

/** Over what one rule found on several plates. */
export const ALIKE = "The same on several plates";
export const onPlates = (count: number): string => `on ${count} plates.`;
