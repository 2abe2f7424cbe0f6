/** Fetched after the page: accepting a finding, one that is accepted, one that stands again, and the list of them. */
import { loadLaterOf } from "#lib/client/late.ts";

const part = loadLaterOf(() => import("./accept-parts.ts").then(({ ACCEPT_PARTS }) => ACCEPT_PARTS));

export const lateAcceptForm = part("form");
export const lateAcceptedFinding = part("finding");
export const lateStandsAgain = part("again");
export const lateAcceptedList = part("list");
