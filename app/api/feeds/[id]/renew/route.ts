import { renewFeed } from "#server/feeds/manage-feeds.ts";
import { guarded, needs } from "#server/http/respond.ts";

export const POST = guarded({ first: needs("feed.own", "feeds.manage"), status: 201 }, ({ app, actor, params }) =>
  renewFeed(app, actor, params.id ?? ""),
);
