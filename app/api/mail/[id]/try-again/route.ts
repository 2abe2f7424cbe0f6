import { guarded, needs } from "#server/http/respond.ts";
import { tryMailAgain } from "#server/mail/manage-mail.ts";

export const POST = guarded({ first: needs("mail.manage") }, ({ app, actor, params }) =>
  tryMailAgain(app, actor, params.id ?? ""),
);
