/** Fetched after the page: nothing is compared with the server before half a second has passed. */
import { loadLater } from "#lib/client/late.ts";

export const lateOpinion = loadLater(() => import("./opinion-parts.ts"));
