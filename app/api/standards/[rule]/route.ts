/** A studio standard: one rule's level and limits in this studio. */
import { guarded, needs } from "#server/http/respond.ts";
import { changeStandard, readStandard, standardChangeSchema } from "#server/studio/change-standard.ts";

export const GET = guarded({}, ({ app, actor, params }) => readStandard(app, actor, params.rule ?? ""));
export const PUT = guarded(
  { body: standardChangeSchema, first: needs("standards.manage") },
  ({ app, actor, params, body }) => changeStandard(app, actor, params.rule ?? "", body.standard, body.seen),
);
