/** What people are told when a thread cannot be opened or settled. */
import { fail } from "#server/base/result.ts";

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

export const FOR_A_LEAD = fail(
  403,
  "for-a-lead",
  "A lead commented in this thread, so only a lead can settle it. Reply with what you have changed.",
);
