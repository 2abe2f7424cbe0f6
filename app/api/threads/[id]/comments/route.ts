/** Answers a thread. */
import { guarded } from "#server/http/respond.ts";
import { needsThread } from "#server/threads/own-thread.ts";
import { addComment, newCommentSchema } from "#server/threads/threads.ts";

export const POST = guarded(
  { body: newCommentSchema, first: needsThread, status: 201 },
  ({ app, actor, params, body }) => addComment(app, actor, params.id ?? "", body.body, body.mentions),
);
