/** Settles a thread or opens it again. */
import { guarded } from "#server/http/respond.ts";
import { settlePlanThread, settleSchema } from "#server/threads/threads.ts";

export const POST = guarded({ body: settleSchema }, ({ app, actor, params, body }) =>
  settlePlanThread(app, actor, params.id ?? "", body.settled),
);
