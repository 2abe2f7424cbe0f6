/** Which findings are accepted as they stand: only with the very values that a lead accepted. */
import { contentHash } from "#lib/canonical/canonical.ts";
import type { Finding } from "#lib/rules/define/types.ts";

/** What an acceptance is tied to. */
export interface Accepted {
  readonly rule: string;
  /** As `acceptanceKey` gives it. */
  readonly findingKey: string;
}

/**
 * Identifies a finding with its items and its values: SHA-256 (hex) of their canonical JSON. Null for values that JSON cannot
 * hold, which are never accepted. The order of its items does not count, nor does the level.
 */
export function acceptanceKey({ rule, key, items, message, values }: Finding): string | null {
  try {
    // As a page got them, without what JSON leaves out.
    const plain: unknown = JSON.parse(JSON.stringify(values));
    return contentHash([rule, key ?? null, [...items].sort(), message, plain]);
  } catch {
    return null;
  }
}

export interface StillAccepted<A extends Accepted, F = Finding> {
  /** By finding: the acceptance that still holds for it. */
  readonly of: ReadonlyMap<F, A>;
  /** Acceptances that hold for nothing any more: the finding has other values, another level, or is gone. */
  readonly noLonger: readonly A[];
}

/** Only a *look again* can be accepted: what must be fixed is never, whatever was accepted before. */
export const stillAccepted = <A extends Accepted>(
  findings: readonly Finding[],
  acceptances: readonly A[],
): StillAccepted<A> => holdingAcceptances(findings, acceptances, acceptanceKey);

/** The same for findings of any kind, of a plan or of a month. `keyOf`: null for one that is never accepted. */
export function holdingAcceptances<F extends { readonly rule: string; readonly level: string }, A extends Accepted>(
  findings: readonly F[],
  acceptances: readonly A[],
  keyOf: (finding: F) => string | null,
): StillAccepted<A, F> {
  const of = new Map<F, A>();
  if (acceptances.length === 0) return { of, noLonger: [] };
  const rules = new Set(acceptances.map(({ rule }) => rule));
  const byKey = new Map(acceptances.map((one) => [one.findingKey, one]));
  for (const finding of findings) {
    if (finding.level !== "look" || !rules.has(finding.rule)) continue;
    const found = byKey.get(keyOf(finding) ?? "");
    if (found?.rule === finding.rule) of.set(finding, found);
  }
  const holding = new Set(of.values());
  return { of, noLonger: acceptances.filter((one) => !holding.has(one)) };
}
