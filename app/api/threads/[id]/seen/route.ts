/** Says that comments which name the asker were in front of them. */
import { guarded } from "#server/http/respond.ts";
import { seeMentions, seenSchema } from "#server/threads/mentions.ts";
import { needsThread } from "#server/threads/own-thread.ts";

export const POST = guarded({ body: seenSchema, first: needsThread }, ({ app, actor, params, body }) =>
  seeMentions(app, actor, params.id ?? "", body.comments),
);
