"use client";

/** Findings as a plain list: which rule, and what it found. The message names the item. */

import type { Finding } from "#lib/rules/define/types.ts";
import { findingWords } from "#lib/rules/finding-words.ts";
import { ruleTitle } from "#lib/rules/rule-title.ts";
import { useFormats } from "./formats.tsx";

export function FindingList({ findings }: { readonly findings: readonly Finding[] }) {
  const f = useFormats();
  return (
    <ul>
      {findings.map((finding, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two findings of one rule may say the same
        <li key={`${finding.key ?? finding.rule}:${i}`}>
          <strong>{ruleTitle(finding.rule) ?? finding.rule}.</strong> {findingWords(finding, f)}
        </li>
      ))}
    </ul>
  );
}
