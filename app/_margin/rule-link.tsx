/** The way from a finding to its rule: why, how to mend, where it comes from. Opens beside the plan, which stays as it is. */

import type { Finding } from "#lib/rules/define/types.ts";
import { ruleById } from "#lib/rules/registry.ts";
import styles from "./margin.module.css";

export function RuleLink({ finding }: { readonly finding: Finding }) {
  // What a broken check leaves behind names the rule that broke.
  const named = finding.values.rule;
  const rule = ruleById(finding.rule) ?? (typeof named === "string" ? ruleById(named) : undefined);
  if (!rule) return null;
  return (
    <a className={styles.link} href={`/rules/${rule.id}`} target="_blank" rel="noreferrer">
      about this rule<span className="visually-hidden">: {rule.title} (opens beside the plan)</span>
    </a>
  );
}
