/** The sentences of accepting a finding. Pure. */
import type { AcceptanceView } from "#lib/protocol/messages.ts";

export const ACCEPT = {
  label: "Why it may stay as it is",
  hint: "At least three words. Everybody who reads the plan sees them; a signed edition keeps them.",
  done: "Accepted. It stands again when its values change.",
  end: "End the acceptance",
  ended: "Ended. The finding stands again.",
  noLonger: "The finding has changed or is gone, so this does not count any more.",
} as const;

/** "Accepted by Ines Duarte on 30 November, 07:41: “Plank lasts 65 s.” Why: They know it well. It says something else now, so it stands again." */
export const standsAgainWords = ({ byName, message, reason }: AcceptanceView, when: string): string =>
  `Accepted by ${byName} on ${when}, as “${message}” Why: ${reason}${/[.!?]$/u.test(reason) ? "" : "."} It says something else now, so it stands again.`;

/** For the page's live region. */
export const againWords = (title: string, { byName }: Pick<AcceptanceView, "byName">): string =>
  `“${title}” stands again: it has other values than those that ${byName} accepted.`;

/** "Accepted by Ines Duarte: They know this change well." */
export const acceptedBy = ({ byName, reason }: Pick<AcceptanceView, "byName" | "reason">): string =>
  `Accepted by ${byName}: ${reason}`;
