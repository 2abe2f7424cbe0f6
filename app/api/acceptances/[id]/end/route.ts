/** Ends an acceptance: the finding stands again. */
import { endAcceptedFinding } from "#server/acceptances/accept.ts";
import { guarded } from "#server/http/respond.ts";

export const POST = guarded({}, ({ app, actor, params }) => endAcceptedFinding(app, actor, params.id ?? ""));
