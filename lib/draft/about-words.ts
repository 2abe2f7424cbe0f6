/** Findings about words that a move does not have yet: while its lines are proposed, they are one thing and not many. */
import type { Finding } from "#lib/rules/define/types.ts";

const ABOUT_MISSING_WORDS: ReadonlySet<string> = new Set([
  "missing-cue",
  "change-not-told",
  "start-place-not-told",
  "springs-changed-carriage-out",
  "caution-without-safety-line",
  "caution-without-easier",
  "expected-caution-unanswered",
  "long-hold-without-breath",
  "silent-stretch",
]);

export const isAboutMissingWords = ({ rule }: Pick<Finding, "rule">): boolean => ABOUT_MISSING_WORDS.has(rule);
