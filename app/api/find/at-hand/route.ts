/** What a page searches by itself: asked for once, as the search is opened. */
import { readAtHand } from "#server/find/at-hand.ts";
import { arrives, refuseOvertaken } from "#server/find/few-at-once.ts";
import { guarded } from "#server/http/respond.ts";

export const GET = guarded(
  { costly: true, first: arrives },
  (call) => refuseOvertaken(call) ?? readAtHand(call.app, call.actor),
);
