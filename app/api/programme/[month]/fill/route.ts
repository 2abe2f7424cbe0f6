/** Plans for the month's empty classes, with the next best of each; the month stays as it is. */
import { guarded, needs } from "#server/http/respond.ts";
import { fillMonthOf } from "#server/programme/fill-month.ts";

export const POST = guarded({ costly: true, first: needs("programme.write") }, ({ app, actor, params }) =>
  fillMonthOf(app, actor, params.month ?? ""),
);
