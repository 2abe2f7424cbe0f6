/** A calendar at its secret address, for programs that read calendars: no session, no cookies. */
import { feedResponse, retryAfter, secretIn } from "#server/feeds/feed-response.ts";
import { readFeed } from "#server/feeds/read-feed.ts";
import { respond, unguarded } from "#server/http/respond.ts";
import { CLIENT_NETWORK_HEADER } from "#server/limits/network.ts";

export const GET = unguarded({}, ({ app, request, params }) => {
  const calendar = readFeed(app, secretIn(params.file ?? ""), request.headers.get(CLIENT_NETWORK_HEADER));
  if (calendar.ok) return feedResponse(calendar.value, request.headers.get("if-none-match"));
  const answer = respond(calendar);
  const seconds = retryAfter(calendar);
  if (seconds) answer.headers.set("retry-after", seconds);
  return answer;
});
