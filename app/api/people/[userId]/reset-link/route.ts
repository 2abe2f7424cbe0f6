import { guarded, needs } from "#server/http/respond.ts";
import { resetByMail, resetByMailSchema } from "#server/people/mailed-links.ts";

export const POST = guarded(
  { body: resetByMailSchema, first: needs("people.manage"), status: 201 },
  ({ app, who, params, body }) => resetByMail(app, who, params.userId ?? "", body),
);
