import { guarded } from "#server/http/respond.ts";
import { changeOwnEmail, ownEmailSchema } from "#server/people/own-account.ts";

export const PUT = guarded({ body: ownEmailSchema }, ({ app, actor, body }) => changeOwnEmail(app, actor, body));
