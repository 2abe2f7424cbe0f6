/** What a page searches by itself: asked for once, as the search is opened. */
import { readAtHand } from "#server/find/at-hand.ts";
import { guarded } from "#server/http/respond.ts";

export const GET = guarded({ costly: true }, ({ app, actor }) => readAtHand(app, actor));
