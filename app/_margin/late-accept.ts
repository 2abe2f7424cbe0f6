/** Fetched after the page: accepting a finding, one that is accepted, and the list of them. */
import { loadLaterOf } from "#lib/client/late.ts";

const part = loadLaterOf(() => import("./accept-parts.ts").then(({ ACCEPT_PARTS }) => ACCEPT_PARTS));

export const lateAcceptForm = part("form");
export const lateAcceptedFinding = part("finding");
export const lateAcceptedList = part("list");
