/**
 * Words that were taken out of the record when somebody's account was deleted for good. The row keeps its place, its hash and the
 * chain; what it said cannot be proved any more. That it was erased is: the row of the deletion, which is in the chain itself,
 * names each erased row with a digest of what is left of it.
 */
import { canonicalJson } from "#lib/canonical/canonical.ts";
import type { Digest, RecordRow } from "./chain.ts";

/** What stands in place of the words. */
export const ERASED_BODY = '{"erased":true}';

/** Kinds whose words hold a name or an address. Only rows that stand for themselves: those about another table's row do not. */
export const ERASABLE: readonly string[] = ["invited", "invitation-revoked", "name-changed", "email-changed"];

/** The kind of the row that tells of a deletion. */
export const PERSON_DELETED = "person-deleted";

/** A row and the digest of what is left of it. */
export interface ErasedRow {
  readonly seq: number;
  readonly sha256: string;
}

/** Over the row as it stands after its words were erased, its first hash included. */
export function erasedDigest(row: RecordRow, digest: Digest): string {
  const { seq, at, actorId, subject, kind, previousHash, hash } = row;
  return digest(canonicalJson({ seq, at, actorId, subject, kind, bodyJson: ERASED_BODY, previousHash, hash }));
}

/** By number, from rows of the kind `PERSON_DELETED`. A row that is not as the program writes it names nothing. */
export function erasedIn(rows: readonly Pick<RecordRow, "seq" | "kind" | "bodyJson">[]): Map<number, string> {
  const found = new Map<number, string>();
  for (const row of rows)
    if (row.kind === PERSON_DELETED)
      for (const { seq, sha256 } of listOf(row.bodyJson)) if (seq < row.seq) found.set(seq, sha256);
  return found;
}

function listOf(bodyJson: string): ErasedRow[] {
  try {
    const { erased } = JSON.parse(bodyJson) as { erased?: unknown };
    return Array.isArray(erased) ? erased.filter(isErasedRow) : [];
  } catch {
    return [];
  }
}

const isErasedRow = (value: unknown): value is ErasedRow =>
  typeof value === "object" &&
  value !== null &&
  "seq" in value &&
  typeof value.seq === "number" &&
  "sha256" in value &&
  typeof value.sha256 === "string";

const WHAT: Readonly<Record<string, string>> = {
  invited: "invited the person",
  "invitation-revoked": "revoked the invitation",
  "name-changed": "changed the name",
  "email-changed": "changed the address",
};

/** What is left to say of such a row, after the name of who did it. */
export const erasedWords = (kind: string): string =>
  `${WHAT[kind] ?? "noted something"} of an account that was deleted since`;

/** What the row of a deletion says, after the name of who did it. */
export function deletedWords({ pseudonym, plans }: Readonly<Record<string, unknown>>): string {
  const n = Number(plans);
  const gone = n > 0 ? `, and ${n} ${n === 1 ? "plan" : "plans"} that only they could see` : "";
  return `deleted the account of ${String(pseudonym)} for good${gone}`;
}
