/** Fetched after the page: few plates have a proposal, and few people write one. */
import { loadLaterOf } from "#lib/client/late.ts";

const part = loadLaterOf(() => import("./propose-parts.ts").then(({ PROPOSE_PARTS }) => PROPOSE_PARTS));

export const latePlateProposals = part("onPlate");
export const latePlateCopy = part("plateCopy");
export const lateOrderCopy = part("orderCopy");
export const lateProposals = part("all");
