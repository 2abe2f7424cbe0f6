/** What a house standard would change in the team's plans, before it is kept. Changes nothing. */
import { studioStandardSchema } from "#lib/rules/studio-standard.ts";
import { guarded, needs } from "#server/http/respond.ts";
import { tryStandard } from "#server/studio/try-standard.ts";

export const POST = guarded(
  { body: studioStandardSchema, first: needs("standards.manage") },
  ({ app, actor, params, body }) => tryStandard(app, actor, params.rule ?? "", body),
);
