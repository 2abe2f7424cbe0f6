/** Findings that were accepted, say something else now, and so stand again. */
import type { Finding } from "#lib/rules/define/types.ts";

interface Lapsed {
  readonly rule: string;
  /** The sentence that was accepted. */
  readonly message: string;
  /** ms since the epoch. */
  readonly at: number;
}

/** A sentence without its numbers: "Plank lasts 65 s" and "Plank lasts 72 s" are about the same thing. */
const withoutNumbers = (message: string): string => message.replace(/\d+(?:[.,:]\d+)*/gu, "#");

/**
 * By finding: the newest acceptance that held for it with other numbers. `noLonger`: acceptances that hold for nothing. An
 * acceptance keeps no key of its finding besides its values, so a sentence that two findings share but for its numbers is
 * ascribed to neither.
 */
export function standsAgain<A extends Lapsed>(
  standing: readonly Finding[],
  noLonger: readonly A[],
): ReadonlyMap<Finding, A> {
  if (noLonger.length === 0) return new Map();
  const kindOf = ({ rule, message }: Pick<Finding, "rule" | "message">) => `${rule}\n${withoutNumbers(message)}`;
  const byKind = new Map<string, Finding | null>();
  for (const finding of standing) byKind.set(kindOf(finding), byKind.has(kindOf(finding)) ? null : finding);
  const again = new Map<Finding, A>();
  for (const one of noLonger.toSorted((a, b) => a.at - b.at)) {
    const finding = byKind.get(kindOf(one));
    if (finding) again.set(finding, one);
  }
  return again;
}
