/** What stands open when a plan is signed: every *look again* that no lead has accepted. */
import type { Finding } from "#lib/rules/define/types.ts";

/** How an accepted finding is known; a finding without a key is about the whole class. */
const plainKey = ({ key, rule }: Finding): string => key ?? rule;

/** `accepted` holds keys as `keyOf` makes them. */
export const openLookAgain = (
  findings: readonly Finding[],
  accepted: Iterable<string>,
  keyOf: (finding: Finding) => string = plainKey,
): Finding[] => {
  const keys = new Set(accepted);
  return findings.filter((finding) => finding.level === "look" && !keys.has(keyOf(finding)));
};
