/** Settles a thread or opens it again. */
import { guarded } from "#server/http/respond.ts";
import { needsThread } from "#server/threads/own-thread.ts";
import { settlePlanThread, settleSchema } from "#server/threads/threads.ts";

export const POST = guarded({ body: settleSchema, first: needsThread }, ({ app, actor, params, body }) =>
  settlePlanThread(app, actor, params.id ?? "", body.settled, body.seen),
);
