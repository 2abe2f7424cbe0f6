/** Findings as a plain list: which check, about which items, and what it found. */
import { nameOf } from "#app/_plan/words.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { ruleById } from "#lib/rules/registry.ts";
import type { Finding } from "#lib/rules/types.ts";

export function FindingList({ plan, findings }: { readonly plan: Plan; readonly findings: readonly Finding[] }) {
  return (
    <ul>
      {findings.map((finding, i) => {
        const first = finding.items[0] === undefined ? undefined : itemById(plan, finding.items[0]);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: two findings of one rule may say the same
          <li key={`${finding.key ?? finding.rule}:${i}`}>
            <strong>{ruleById(finding.rule)?.title ?? finding.rule}</strong>
            {first && `, ${nameOf(plan, first)}`}. {finding.message}
          </li>
        );
      })}
    </ul>
  );
}
