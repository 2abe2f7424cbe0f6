import { guarded } from "#server/http/respond.ts";
import { listResetLinks } from "#server/people/open-resets.ts";

export const GET = guarded({}, ({ app, actor }) => listResetLinks(app, actor));
