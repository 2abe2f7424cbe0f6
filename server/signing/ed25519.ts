/** Ed25519 (RFC 8032) from a 32-byte seed, with Node's own cryptography. Synchronous, since sign-off is one step. */
import { createPrivateKey, createPublicKey, sign as nodeSign, verify as nodeVerify } from "node:crypto";
import type { SignatureCheck } from "#lib/card/verify-card.ts";

/** The PKCS#8 header before the 32 bytes of an Ed25519 private key (RFC 8410 section 7). */
const PKCS8_PREFIX = Buffer.from("302e020100300506032b657004220420", "hex");
/** The header before the 32 bytes of a public key (RFC 8410 section 4). */
const SPKI_PREFIX = Buffer.from("302a300506032b6570032100", "hex");
const SEED_BYTES = 32;

const privateKeyOf = (seed: Uint8Array) => {
  if (seed.length !== SEED_BYTES) throw new RangeError("an Ed25519 seed has 32 bytes");
  return createPrivateKey({ key: Buffer.concat([PKCS8_PREFIX, seed]), format: "der", type: "pkcs8" });
};

/** The 32 bytes of the public key. */
export function publicKeyOf(seed: Uint8Array): Uint8Array {
  const spki = createPublicKey(privateKeyOf(seed)).export({ format: "der", type: "spki" });
  return new Uint8Array(spki.subarray(spki.length - 32));
}

/** The 64 bytes of the signature over `message`. */
export function signWithSeed(seed: Uint8Array, message: Uint8Array): Uint8Array {
  return new Uint8Array(nodeSign(null, message, privateKeyOf(seed)));
}

export const checkSignature: SignatureCheck = (signature, message, publicKey) =>
  nodeVerify(
    null,
    message,
    createPublicKey({ key: Buffer.concat([SPKI_PREFIX, publicKey]), format: "der", type: "spki" }),
    signature,
  );
