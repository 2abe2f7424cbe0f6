/** Settles a thread or opens it again. */
import { guarded } from "#server/http/respond.ts";
import { settleSchema, settleThread } from "#server/threads/threads.ts";

export const POST = guarded({ body: settleSchema }, ({ app, actor, params, body }) =>
  settleThread(app, actor, params.id ?? "", body.settled),
);
