import { guarded } from "#server/http/respond.ts";
import { seeAllNotices, seeAllSchema } from "#server/notices/list-notices.ts";

export const POST = guarded({ body: seeAllSchema }, ({ app, actor, body }) => seeAllNotices(app, actor, body));
