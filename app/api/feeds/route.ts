import { listFeeds, makeFeed, newFeedSchema } from "#server/feeds/manage-feeds.ts";
import { guarded, needs } from "#server/http/respond.ts";

const first = needs("feed.own", "feeds.manage");

export const GET = guarded({ first }, ({ app, actor }) => listFeeds(app, actor));
export const POST = guarded({ body: newFeedSchema, first, status: 201 }, ({ app, actor, body }) =>
  makeFeed(app, actor, body),
);
