/** What was taught of a month. */
import { guarded } from "#server/http/respond.ts";
import { readLookBack } from "#server/look-back/look-back.ts";

export const GET = guarded({ costly: true }, ({ app, actor, params }) => readLookBack(app, actor, params.month ?? ""));
