import { withdrawFeed } from "#server/feeds/manage-feeds.ts";
import { guarded, needs } from "#server/http/respond.ts";

export const DELETE = guarded({ first: needs("feed.own", "feeds.manage") }, ({ app, actor, params }) =>
  withdrawFeed(app, actor, params.id ?? ""),
);
