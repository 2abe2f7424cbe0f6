/** Which findings of a month are accepted as they stand: only with the very values that a lead accepted. */
import { contentHash } from "#lib/canonical/canonical.ts";
import type { MonthFinding } from "#lib/month/types.ts";
import { type Accepted, holdingAcceptances, type StillAccepted } from "./accepted.ts";

/** SHA-256 (hex) of the finding with its classes, words and values; null for values that JSON cannot hold. */
export function monthAcceptanceKey({ id, rule, slots, message, values }: MonthFinding): string | null {
  try {
    const plain: unknown = JSON.parse(JSON.stringify(values));
    return contentHash([rule, id, [...slots].sort(), message, plain]);
  } catch {
    return null;
  }
}

/** Only a *look again* can be accepted. */
export const monthStillAccepted = <A extends Accepted>(
  findings: readonly MonthFinding[],
  acceptances: readonly A[],
): StillAccepted<A, MonthFinding> => holdingAcceptances(findings, acceptances, monthAcceptanceKey);
