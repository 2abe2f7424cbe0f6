/** The findings of a month that leads accepted with a reason, and one more. */
import { guarded, needs } from "#server/http/respond.ts";
import { acceptInMonth, acceptInMonthSchema, readMonthAcceptances } from "#server/month-sign/accept-in-month.ts";

export const GET = guarded({ costly: true }, ({ app, actor, params }) =>
  readMonthAcceptances(app, actor, params.month ?? ""),
);

export const POST = guarded(
  { body: acceptInMonthSchema, first: needs("month.sign"), status: 201 },
  ({ app, actor, params, body }) => acceptInMonth(app, actor, params.month ?? "", body),
);
