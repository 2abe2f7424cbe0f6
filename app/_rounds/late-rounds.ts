/** Fetched after the page: few people compare at once. */
import { loadLaterOf } from "#lib/client/late.ts";

const part = loadLaterOf(() => import("./round-parts.ts").then(({ ROUND_PARTS }) => ROUND_PARTS));

export const lateComparing = part("comparing");
export const lateChangesBar = part("bar");
export const lateReadCount = part("count");
export const latePlateChange = part("plate");
