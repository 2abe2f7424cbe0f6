/** Ends an acceptance: the finding of the month stands again. */
import { guarded, needs } from "#server/http/respond.ts";
import { endAcceptedInMonth } from "#server/month-sign/accept-in-month.ts";

export const POST = guarded({ first: needs("month.sign") }, ({ app, actor, params }) =>
  endAcceptedInMonth(app, actor, params.month ?? "", params.id ?? ""),
);
