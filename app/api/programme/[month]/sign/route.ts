/** Signs a month off as it was read. */
import { guarded, needs } from "#server/http/respond.ts";
import { signMonth, signMonthSchema } from "#server/month-sign/sign-month.ts";

export const POST = guarded(
  { body: signMonthSchema, costly: true, first: needs("month.sign"), status: 201 },
  ({ app, actor, params, body }) => signMonth(app, actor, params.month ?? "", body),
);
