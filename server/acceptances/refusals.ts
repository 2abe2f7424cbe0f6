/** What a lead is told when a finding cannot be accepted. */
import type { FindingLevel } from "#lib/plan/schema.ts";
import type { AcceptanceView } from "#lib/protocol/messages.ts";
import { LEVEL_WORDS } from "#lib/rules/level-words.ts";
import { fail, type Result } from "#server/base/result.ts";

export const UNCHECKED_TO_ACCEPT = fail(
  503,
  "unchecked",
  "The plan could not be checked just now, so nothing was accepted. Try again in a moment.",
);

export const ALREADY_ENDED = fail(409, "already-ended", "This was ended already: the finding stands again.");

/** `now`: what the server finds under the same key; null when it finds nothing there. `words`: its sentence in the lead's units. */
export const standsDifferently = (
  now: { readonly message: string } | null,
  words: string | undefined = now?.message,
): Result<never> =>
  fail(
    409,
    "finding-changed",
    now === null
      ? "The server does not find this any more, so nothing was accepted."
      : `The finding has changed, so nothing was accepted. It now says: ${words} Read it, then accept it as it is now.`,
    { finding: now },
  );

export const notLookAgain = (level: FindingLevel): Result<never> =>
  fail(
    409,
    "not-look-again",
    level === "must"
      ? "What must be fixed cannot be accepted. Fix it, or ask a manager about the level of its rule."
      : `A finding “${LEVEL_WORDS[level]}” holds nothing up and needs no acceptance.`,
  );

export const alreadyAccepted = ({ byName, reason }: AcceptanceView): Result<never> =>
  fail(409, "already-accepted", `${byName} has accepted this already: “${reason}”`);
