/** The way from a finding to its rule: why it matters, how to fix it, its source. Opens in a new tab, so the plan stays open. */

import type { Finding } from "#lib/rules/define/types.ts";
import { ruleTitle } from "#lib/rules/rule-title.ts";

export function RuleLink({ finding }: { readonly finding: Finding }) {
  // The finding that a broken check leaves names the rule that broke.
  const named = finding.values.rule;
  const rule = [finding.rule, named].find((id) => typeof id === "string" && ruleTitle(id) !== undefined);
  if (typeof rule !== "string") return null;
  return (
    <a className="text-button text-button-low small" href={`/rules/${rule}`} target="_blank" rel="noreferrer">
      About this rule<span className="visually-hidden">: {ruleTitle(rule)} (opens in a new tab)</span>
    </a>
  );
}
