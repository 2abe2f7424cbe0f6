/** The chain of the record: what the hash of a row is taken over, and which row of a list is the first that does not hold. */
import { canonicalJson, sha256Hex } from "#lib/canonical/canonical.ts";

export interface RecordRow {
  /** 1, 2, ... without a gap. */
  readonly seq: number;
  /** ms since the epoch. */
  readonly at: number;
  readonly actorId: string;
  readonly subject: string;
  readonly kind: string;
  /** Canonical JSON, RFC 8785. */
  readonly bodyJson: string;
  /** SHA-256 (hex) of the row before. */
  readonly previousHash: string;
  /** SHA-256 (hex) of this row without this column. */
  readonly hash: string;
}

/** What the first row has in place of the hash of the row before. */
export const FIRST_PREVIOUS = "0".repeat(64);

/** SHA-256 (hex) over the canonical JSON of a row without its hash. */
export function rowHash(row: Omit<RecordRow, "hash">): string {
  const { seq, at, actorId, subject, kind, bodyJson, previousHash } = row;
  return sha256Hex(canonicalJson({ seq, at, actorId, subject, kind, bodyJson, previousHash }));
}
