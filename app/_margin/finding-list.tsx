/** Findings as a plain list: which check, and what it found; the words name the item. */

import type { Finding } from "#lib/rules/define/types.ts";
import { ruleById } from "#lib/rules/registry.ts";

export function FindingList({ findings }: { readonly findings: readonly Finding[] }) {
  return (
    <ul>
      {findings.map((finding, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two findings of one rule may say the same
        <li key={`${finding.key ?? finding.rule}:${i}`}>
          <strong>{ruleById(finding.rule)?.title ?? finding.rule}.</strong> {finding.message}
        </li>
      ))}
    </ul>
  );
}
