/** Adds to a class log who led the class, or that it does not count. */
import { guarded, needs } from "#server/http/respond.ts";
import { remarkLog, remarkLogSchema } from "#server/look-back/remark-log.ts";

export const POST = guarded(
  { body: remarkLogSchema, first: needs("look-back.read"), status: 201 },
  ({ app, actor, params, body }) => remarkLog(app, actor, params.key ?? "", body),
);
