/** The sentences of the margin: findings, threads, offering and returning. Pure. */
import { agree, plural } from "#lib/plan/format.ts";
import type { PlanState, ThreadView } from "#lib/protocol/messages.ts";

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
export const commentOnWords = (name: string): string => `Comment on ${name}`;
export const COMMENT_SENT = "Comment sent.";

export const THREAD = {
  onPlan: "on the whole plan",
  wordsGone: "These words were deleted from the script.",
  wordsNow: "These words now read: ",
  forLead: "Only a lead can settle this thread. Reply with what you changed.",
  replySent: "Reply sent.",
} as const;

export const settledWords = (settled: boolean): string => (settled ? "Thread settled." : "Thread opened again.");

/** "Ines Duarte", or "Ines Duarte · 2 replies". */
export function threadTitle({ comments }: ThreadView): string {
  const replies = comments.length - 1;
  const by = comments[0]?.authorName ?? "Somebody";
  return replies > 0 ? `${by} · ${plural(replies, "reply", "replies")}` : by;
}

/** While lines are proposed for a move: everything that was found about words that it does not have. */
export const foldedFindings = (count: number): string =>
  agree(count, "No words yet: one finding", `No words yet: ${count} findings`);

export const FIX_ALL = "Fix all of this kind";

/** Over what one rule found on several plates. */
export const ALIKE = "The same on several plates";
export const onPlates = (count: number): string => `on ${count} plates.`;
