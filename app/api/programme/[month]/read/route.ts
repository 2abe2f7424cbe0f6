/** Opens a month's sign-off: what is read now is what can be signed. */
import { guarded, needs } from "#server/http/respond.ts";
import { readMonthForSignOff } from "#server/month-sign/read-month.ts";

export const POST = guarded({ costly: true, first: needs("month.sign") }, ({ app, actor, params }) =>
  readMonthForSignOff(app, actor, params.month ?? ""),
);
