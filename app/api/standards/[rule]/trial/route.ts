/** What a house standard would change in the team's plans, before it is kept. Changes nothing. */
import { guarded } from "#server/http/respond.ts";
import { standardChangeSchema } from "#server/studio/change-standard.ts";
import { tryStandard } from "#server/studio/try-standard.ts";

export const POST = guarded({ body: standardChangeSchema }, ({ app, actor, params, body }) =>
  tryStandard(app, actor, params.rule ?? "", body),
);
