/** When a month was signed off, by whom. */
import { guarded } from "#server/http/respond.ts";
import { readMonthEditions } from "#server/month-sign/month-editions.ts";

export const GET = guarded({ costly: true }, ({ app, actor, params }) =>
  readMonthEditions(app, actor, params.month ?? ""),
);
