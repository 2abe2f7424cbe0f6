/** The sentences of threads. Pure. */
import { plural } from "#lib/plan/format.ts";
import type { ThreadView } from "#lib/protocol/messages.ts";

export const THREAD = {
  onPlan: "on the whole plan",
  wordsGone: "These words were deleted from the script.",
  wordsNow: "These words now read: ",
  forLead: "Only a lead can settle this thread. Reply with what you changed.",
  settledMeanwhile:
    "The thread was settled while you wrote. Your words are kept here and can still be sent; the thread stays settled.",
  replyTo: (name: string) => `Reply to ${name}`,
  replySent: "Reply sent.",
  replyToSettled: "Reply sent. The thread is settled: open it again if something is still to be done.",
  namesYou: "names you",
  readFirst: "Not all comments were in sight, so nothing is settled yet. Read them, then settle the thread.",
} as const;

/** Between the first and the last comment of a closed thread. */
export const moreBetween = (count: number): string => `${plural(count, "comment")} between`;

export const onChangeWords = (name: string | null): string =>
  name === null ? "on a change before an item that is gone" : `on the change before ${name}`;

/** "unknown" while not all rules have run. */
export function onFindingWords(title: string, state: "stands" | "gone" | "unknown"): string {
  const now = { stands: "It is still found.", gone: "It is not found any more.", unknown: "" }[state];
  return `on “${title}”. ${now}`.trim();
}

/** Of a thread whose item was taken out: where it stood. */
export function takenOutPlace(name: string | null, time: string | null): string {
  if (name === null) return "Its item is not in the plan any more.";
  return time === null ? `${name} was taken out.` : `${name} was taken out; it stood at ${time}.`;
}

export const settledWords = (settled: boolean): string => (settled ? "Thread settled." : "Thread opened again.");

/** "Ines Duarte", or "Ines Duarte · 2 replies". */
export function threadTitle({ comments }: ThreadView): string {
  const replies = comments.length - 1;
  const by = comments[0]?.authorName ?? "Somebody";
  return replies > 0 ? `${by} · ${plural(replies, "reply", "replies")}` : by;
}
