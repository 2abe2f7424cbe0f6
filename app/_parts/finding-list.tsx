/** Findings as a plain list: which rule, and what it found. The message names the item. */

import type { Finding } from "#lib/rules/define/types.ts";
import { ruleTitle } from "#lib/rules/rule-title.ts";

export function FindingList({ findings }: { readonly findings: readonly Finding[] }) {
  return (
    <ul>
      {findings.map((finding, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two findings of one rule may say the same
        <li key={`${finding.key ?? finding.rule}:${i}`}>
          <strong>{ruleTitle(finding.rule) ?? finding.rule}.</strong> {finding.message}
        </li>
      ))}
    </ul>
  );
}
