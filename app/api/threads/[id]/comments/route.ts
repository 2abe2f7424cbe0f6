/** Answers a thread. */
import { guarded } from "#server/http/respond.ts";
import { addComment, newCommentSchema } from "#server/threads/threads.ts";

export const POST = guarded({ body: newCommentSchema, status: 201 }, ({ app, actor, params, body }) =>
  addComment(app, actor, params.id ?? "", body.body),
);
