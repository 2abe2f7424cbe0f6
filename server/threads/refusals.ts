/** What people are told when a thread cannot be opened or settled. */
import { MOST_THREAD_COMMENTS, MOST_THREADS } from "#lib/margin/talk-bounds.ts";
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

export const THREAD_FINDING_UNKNOWN = fail(
  422,
  "no-such-finding",
  "The checks of this studio do not have this finding. Reload the page, or comment on the item itself.",
);

export const THREAD_WORDS_GONE = fail(
  409,
  "words-gone",
  "The script does not have these words any more: they were changed while you wrote, or are not saved yet. Your comment can go on the plate instead.",
);

export const TOO_MANY_THREADS = fail(
  409,
  "too-many-threads",
  `This plan has ${MOST_THREADS} threads, which is as many as it can hold. Answer in one of them, or go on in a copy of the plan.`,
);

export const TOO_MANY_COMMENTS = fail(
  409,
  "too-many-comments",
  `This thread has ${MOST_THREAD_COMMENTS} comments, which is as many as it can hold. Go on in a new thread.`,
);

export const TALK_FULL = fail(
  409,
  "plan-talk-full",
  "This plan’s comments are as long together as it can hold. Write a shorter one, or go on in a copy of the plan.",
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
