/** What people are told when a thread cannot be opened or settled. */
import { agree } from "#lib/plan/format.ts";
import type { CommentView } from "#lib/protocol/messages.ts";
import { fail, type Result } from "#server/base/result.ts";

export const THREAD_ITEM_UNKNOWN = fail(
  422,
  "no-such-item",
  "The server does not have this item: it was taken out, or it is not saved yet. Try again in a moment.",
);

export const THREAD_ITEM_WITHOUT_WORDS = fail(
  422,
  "no-words",
  "This item has no script to comment on. Comment on the item itself.",
);

export const THREAD_ITEM_WITHOUT_CHANGE = fail(
  422,
  "no-change",
  "Nobody changes set-up before a heading or a pause. Comment on the item itself.",
);

export const MENTION_UNKNOWN = fail(
  422,
  "unknown-mention",
  "Somebody who was to be named is not in the words of the comment, or may not read this plan. Write @ and choose the name from the list.",
);

/** `comments`: those that were not in sight, the oldest first. */
export function answeredSince(comments: readonly CommentView[]): Result<never> {
  const [first] = comments;
  const by = first?.authorName ?? "Somebody";
  const many = agree(comments.length, `${by} has answered since`, `There are ${comments.length} new comments`);
  return fail(409, "answered-since", `${many}: the thread is still open. Read what is new, then settle it.`, {
    comments,
  });
}

export const FOR_A_LEAD = fail(
  403,
  "for-a-lead",
  "A lead commented in this thread, so only a lead can settle it. Reply with what you have changed.",
);
