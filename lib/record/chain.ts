/** The chain of the record: what the hash of a row is taken over, and how the body of a row is written. */
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

/** The last row of a chain. Whoever knows it can tell later whether anything before it was touched. */
export interface RecordHead {
  /** 0 while the record is empty. */
  readonly seq: number;
  readonly hash: string;
}

/** SHA-256 of a text's UTF-8 bytes, 64 hex digits. */
export type Digest = (text: string) => string;

/** What the first row has in place of the hash of the row before. */
export const FIRST_PREVIOUS = "0".repeat(64);

/** The kind of a row that says that the record did not end as it had been written; it never holds. */
export const BROKEN_END = "broken-end";

/** SHA-256 (hex) over the canonical JSON of a row without its hash. */
export function rowHash(row: Omit<RecordRow, "hash">, digest: Digest = sha256Hex): string {
  const { seq, at, actorId, subject, kind, bodyJson, previousHash } = row;
  return digest(canonicalJson({ seq, at, actorId, subject, kind, bodyJson, previousHash }));
}

/** Canonical JSON of anything that JSON can hold. Half a surrogate pair becomes U+FFFD, since UTF-8 has no bytes for it. */
export function recordJson(value: unknown): string {
  const whole = (_: string, part: unknown) => (typeof part === "string" ? wellFormed(part) : part);
  return canonicalJson(JSON.parse(JSON.stringify(value ?? null), whole));
}

/** Typed text without half surrogate pairs. */
export const wellFormed = (text: string): string => text.replace(/\p{Surrogate}/gu, "\uFFFD");

/** "1234:9f3a...", with all 64 digits: what is printed on sheets and given to the proof. */
export const headText = ({ seq, hash }: RecordHead): string => `${seq}:${hash}`;

/** Fewer could be met by trying out rows. */
const LEAST_DIGITS = 16;

/** A head as it was printed; at least 16 digits of the hash. Null for anything else. */
export function parseHead(text: string): RecordHead | null {
  const found = /^\s*([\d,]+)\s*:\s*([0-9a-f\s]+?)\s*$/i.exec(text);
  const seq = Number(found?.[1]?.replaceAll(",", ""));
  const hash = found?.[2]?.replace(/\s/g, "").toLowerCase() ?? "";
  return Number.isSafeInteger(seq) && seq > 0 && hash.length >= LEAST_DIGITS && hash.length <= 64
    ? { seq, hash }
    : null;
}
