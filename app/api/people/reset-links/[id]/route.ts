import { guarded } from "#server/http/respond.ts";
import { withdrawResetLink } from "#server/people/open-resets.ts";

export const DELETE = guarded({}, ({ app, actor, params }) => withdrawResetLink(app, actor, params.id ?? ""));
