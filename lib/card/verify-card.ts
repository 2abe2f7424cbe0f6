/**
 * Checks that this is the card the studio signed. Runs on the device without a network. The cryptography is plain script,
 * since browsers withhold their own from pages served over plain HTTP.
 */
import { hashes, verify } from "@noble/ed25519";
import { sha512 } from "@noble/hashes/sha2.js";
import { canonicalJson, contentHash, sha256Hex } from "#lib/canonical/canonical.ts";
import { fromBase64url } from "./base64url.ts";
import { CARD_FORMAT, type Card, cardSchema, envelopeSchema } from "./schema.ts";

hashes.sha512 = sha512;

/** Whether `signature` (64 bytes) over `message` is by the owner of `publicKey` (32 bytes). May throw for bytes that are neither. */
export type SignatureCheck = (signature: Uint8Array, message: Uint8Array, publicKey: Uint8Array) => boolean;

export type Verified = { readonly ok: true; readonly card: Card } | { readonly ok: false; readonly reason: string };

const refuse = (reason: string): Verified => ({ ok: false, reason });
const NOT_A_CARD = `This is not a cue card in the format ${CARD_FORMAT}. Fetch it again, or reload the page to update it.`;
const CHANGED = "This edition was changed after it was signed. Fetch it again.";
const OTHER_KEY =
  "This edition is not signed with the key of this studio. If the studio has a new key, pair the device again.";
const OTHER_PLAN = "The plan in this file is not the edition that it names. Fetch it again, and tell your lead.";

/**
 * Checks shape, digest, signature, date and the plan's hash, in this order, and says in a sentence what is wrong.
 * @param publicKey the studio's Ed25519 key, base64url, 32 bytes, as it was received at pairing
 * @param now ms since the epoch, UTC
 * @param check of an Ed25519 signature (RFC 8032); the server gives its own, which is fifty times as fast
 */
export function verifyCard(
  envelope: unknown,
  publicKey: string,
  now: number,
  check: SignatureCheck = plainCheck,
): Verified {
  const outer = envelopeSchema.safeParse(envelope);
  if (!outer.success) return refuse(NOT_A_CARD);
  const { card: raw, sha256, signature } = outer.data;
  const text = canonicalOf(raw);
  if (text === null) return refuse(NOT_A_CARD);
  if (sha256Hex(text) !== sha256) return refuse(CHANGED);
  if (!signedBy(check, { publicKey, signature, text })) return refuse(OTHER_KEY);
  const parsed = cardSchema.safeParse(raw);
  if (!parsed.success) return refuse(NOT_A_CARD);
  const card = parsed.data;
  if (now >= Date.parse(card.expiresAt)) {
    return refuse(
      `This edition was good until ${card.expiresAt.slice(0, 10)}. Ask a lead to sign the plan off again, then fetch it.`,
    );
  }
  if (contentHash(card.plan) !== card.edition.hash) return refuse(OTHER_PLAN);
  return { ok: true, card };
}

function canonicalOf(value: unknown): string | null {
  try {
    return canonicalJson(value);
  } catch {
    return null; // not JSON, so it was never signed
  }
}

interface Signed {
  readonly publicKey: string;
  readonly signature: string;
  /** The canonical card: the bytes that are signed (`card-bytes.ts`). */
  readonly text: string;
}

function signedBy(check: SignatureCheck, { publicKey, signature, text }: Signed): boolean {
  const key = fromBase64url(publicKey);
  const sig = fromBase64url(signature);
  if (key?.length !== 32 || sig?.length !== 64) return false;
  try {
    return check(sig, new TextEncoder().encode(text), key);
  } catch {
    return false; // the key or the signature is not a point on the curve
  }
}

// zip215 off: the strict reading of RFC 8032, as in OpenSSL.
const plainCheck: SignatureCheck = (signature, message, key) => verify(signature, message, key, { zip215: false });
