/** A house standard: one rule's level and limits in this studio. */
import { guarded } from "#server/http/respond.ts";
import { changeStandard, readStandard, standardChangeSchema } from "#server/studio/change-standard.ts";

export const GET = guarded({}, ({ app, actor, params }) => readStandard(app, actor, params.rule ?? ""));
export const PUT = guarded({ body: standardChangeSchema }, ({ app, actor, params, body }) =>
  changeStandard(app, actor, params.rule ?? "", body.standard, body.seen),
);
