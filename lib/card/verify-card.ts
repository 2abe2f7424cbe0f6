/**
 * Is this the card the studio signed? Runs on the device with the network gone. It needs no secure context: the
 * verification is plain script, since a browser withholds its own cryptography from pages served over plain HTTP.
 */
import { hashes, verify } from "@noble/ed25519";
import { sha512 } from "@noble/hashes/sha2.js";
import { canonicalJson, contentHash, sha256Hex } from "#lib/canonical/canonical.ts";
import { fromBase64url } from "./base64url.ts";
import { cardBytes } from "./card-bytes.ts";
import { CARD_FORMAT, type Card, cardSchema, envelopeSchema } from "./schema.ts";

hashes.sha512 = sha512;

export type Verified = { readonly ok: true; readonly card: Card } | { readonly ok: false; readonly reason: string };

const refuse = (reason: string): Verified => ({ ok: false, reason });
const NOT_A_CARD = `This is not a cue card of the form ${CARD_FORMAT}. Fetch it again, or update this page.`;
const CHANGED = "This card was changed after it was signed. Fetch it again.";
const OTHER_KEY =
  "This card is not signed with the key of this studio. Pair the device again if the studio has a new key.";
const OTHER_PLAN = "The plan on this card is not the edition it says it is. Fetch it again, and tell your lead.";

/**
 * Checks form, digest, signature, date and the plan's own hash, in this order, and says in a sentence what is wrong.
 * @param publicKey the studio's Ed25519 key, base64url, 32 bytes, as it was received at pairing
 * @param now ms since the epoch, UTC
 */
export function verifyCard(envelope: unknown, publicKey: string, now: number): Verified {
  const outer = envelopeSchema.safeParse(envelope);
  if (!outer.success) return refuse(NOT_A_CARD);
  const { card: raw, sha256, signature } = outer.data;
  const text = canonicalOf(raw);
  if (text === null) return refuse(NOT_A_CARD);
  if (sha256Hex(text) !== sha256) return refuse(CHANGED);
  if (!signedBy(publicKey, signature, raw)) return refuse(OTHER_KEY);
  const parsed = cardSchema.safeParse(raw);
  if (!parsed.success) return refuse(NOT_A_CARD);
  const card = parsed.data;
  if (now >= Date.parse(card.expiresAt)) {
    return refuse(`This card was good until ${card.expiresAt.slice(0, 10)}. Fetch it again.`);
  }
  if (contentHash(card.plan) !== card.edition.hash) return refuse(OTHER_PLAN);
  return { ok: true, card };
}

function canonicalOf(value: unknown): string | null {
  try {
    return canonicalJson(value);
  } catch {
    return null; // what JSON cannot hold was never signed
  }
}

function signedBy(publicKey: string, signature: string, card: unknown): boolean {
  const key = fromBase64url(publicKey);
  const sig = fromBase64url(signature);
  if (key?.length !== 32 || sig?.length !== 64) return false;
  try {
    // zip215 off: the strict reading of RFC 8032, the same that OpenSSL takes.
    return verify(sig, cardBytes(card), key, { zip215: false });
  } catch {
    return false; // a key or signature that is no point of the curve
  }
}
