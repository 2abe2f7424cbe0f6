/** What a studio standard would change in the team plans. Nothing is saved. */
import { houseStandardSchema } from "#lib/rules/house-standard.ts";
import { guarded, needs } from "#server/http/respond.ts";
import { tryStandard } from "#server/studio/try-standard.ts";

export const POST = guarded(
  { body: houseStandardSchema, first: needs("standards.manage") },
  ({ app, actor, params, body }) => tryStandard(app, actor, params.rule ?? "", body),
);
