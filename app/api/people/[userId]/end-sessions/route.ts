import { guarded } from "#server/http/respond.ts";
import { endSessions } from "#server/people/manage-people.ts";

export const POST = guarded({}, ({ app, actor, params }) => endSessions(app, actor, params.userId ?? ""));
