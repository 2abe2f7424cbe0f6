/**
 * Checks an exported studio with its files alone, as README.txt in it says, with Node's own cryptography, @noble/ed25519 and
 * canonicalize: nothing of ours is imported here. Sources: RFC 8032 (Ed25519), RFC 8785 (canonical JSON), FIPS 180-4 (SHA-256).
 */
import { createHash, createPublicKey, verify as nodeVerify } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import * as ed from "@noble/ed25519";
import canonicalize from "canonicalize";

interface Listed {
  readonly hash: string;
  readonly plan: string;
  readonly card: string;
}
interface CardFile {
  readonly card: { readonly edition: { readonly hash: string }; readonly plan: unknown };
  readonly sha256: string;
  readonly keyId: string;
  readonly signature: string;
}

const sha256 = (bytes: string | Buffer) => createHash("sha256").update(bytes).digest("hex");

/** How many files, editions and rows of the record hold. Throws at the first that does not. */
export async function checkAsThirdParty(folder: string): Promise<{ files: number; editions: number; rows: number }> {
  const text = (path: string) => readFileSync(join(folder, path), "utf8");
  const json = (path: string) => JSON.parse(text(path));
  const { files, record } = json("manifest.json") as {
    files: { path: string; bytes: number; sha256: string }[];
    record: { hash: string };
  };
  for (const file of files) {
    const bytes = readFileSync(join(folder, file.path));
    if (bytes.length !== file.bytes || sha256(bytes) !== file.sha256) throw new Error(`${file.path} does not hold`);
  }
  const { keys } = json("editions/public-keys.json") as { keys: { id: string; publicKey: string }[] };
  const editions = json("editions/editions.json") as Listed[];
  for (const listed of editions) {
    const envelope = json(listed.card) as CardFile;
    const key = Buffer.from(keys.find(({ id }) => id === envelope.keyId)?.publicKey ?? "", "base64url");
    if (!(await cardHolds(envelope, key))) throw new Error(`${listed.card} does not hold`);
    const hash = sha256(text(listed.plan));
    const inside = sha256(canonicalize(envelope.card.plan) ?? "");
    if (hash !== envelope.card.edition.hash || inside !== hash || listed.hash !== hash)
      throw new Error(`${listed.plan} is not the plan of its card`);
  }
  const rows = text("tables/record.jsonl").trimEnd().split("\n");
  if (chainEnd(rows) !== record.hash) throw new Error("the record does not end as the manifest says");
  return { files: files.length, editions: editions.length, rows: rows.length };
}

/** By two implementations. */
async function cardHolds({ card, sha256: digest, signature }: CardFile, key: Buffer): Promise<boolean> {
  const signed = Buffer.from(canonicalize(card) ?? "", "utf8");
  const bytes = Buffer.from(signature, "base64url");
  const jwk = { kty: "OKP", crv: "Ed25519", x: key.toString("base64url") };
  const byNode = nodeVerify(null, signed, createPublicKey({ key: jwk, format: "jwk" }), bytes);
  const byNoble = await ed.verifyAsync(bytes, signed, key, { zip215: false });
  return sha256(signed) === digest && byNode && byNoble;
}

function chainEnd(lines: readonly string[]): string {
  const rows = lines.map((line) => JSON.parse(line) as Record<string, string | number>);
  const erased = rows
    .filter(({ kind }) => kind === "person-deleted")
    .flatMap((row) => (JSON.parse(String(row.body_json)) as { erased: { seq: number; sha256: string }[] }).erased);
  let last = "0".repeat(64);
  for (const row of rows) {
    const { seq, at, subject, kind, hash } = row;
    const said = { seq, at, subject, kind, actorId: row.actor_id, bodyJson: row.body_json, previousHash: last };
    const left = erased.find((one) => one.seq === seq)?.sha256;
    const holds =
      left === undefined
        ? sha256(canonicalize(said) ?? "") === hash
        : sha256(canonicalize({ ...said, hash }) ?? "") === left;
    if (row.previous_hash !== last || !holds) throw new Error(`row ${seq} of the record does not hold`);
    last = String(row.hash);
  }
  return last;
}
