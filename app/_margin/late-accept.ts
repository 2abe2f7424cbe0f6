/** Fetched after the page: accepting a finding, one that is accepted, and the list of them. */
import { loadLater } from "#lib/client/late.ts";

export const lateAcceptForm = loadLater(() => import("./accept-form.tsx").then((module) => module.AcceptForm));
export const lateAcceptedFinding = loadLater(() =>
  import("./accepted-finding.tsx").then((module) => module.AcceptedFinding),
);
export const lateAcceptedList = loadLater(() => import("./accepted-list.tsx").then((module) => module.AcceptedList));
