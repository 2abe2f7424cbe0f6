/** A month as it was signed off, with the plans that the reader may know. */
import { guarded } from "#server/http/respond.ts";
import { readSignedMonth } from "#server/month-sign/month-editions.ts";

export const GET = guarded({ costly: true }, ({ app, actor, params }) =>
  readSignedMonth(app, actor, params.month ?? "", Number(params.number)),
);
