import { guarded } from "#server/http/respond.ts";
import { changeOwnName, ownNameSchema } from "#server/people/own-account.ts";

export const PUT = guarded({ body: ownNameSchema }, ({ app, actor, body }) => changeOwnName(app, actor, body));
