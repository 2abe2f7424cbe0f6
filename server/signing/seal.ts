/**
 * Secrets at rest: AES-256-GCM under a key derived from the server's secret (HKDF-SHA-256, RFC 5869). What is sealed can
 * only be opened with the same secret and for the same purpose.
 */
import { createCipheriv, createDecipheriv, hkdfSync, randomBytes } from "node:crypto";

const FORM = "v1";
const IV_BYTES = 12;
const SALT = "springline";

const keyFor = (secret: string, purpose: string) => Buffer.from(hkdfSync("sha256", secret, SALT, purpose, 32));
const text = (bytes: Buffer) => bytes.toString("base64url");

/** `v1.<iv>.<tag>.<ciphertext>`, base64url. */
export function seal(secret: string, purpose: string, plain: Uint8Array): string {
  const iv = randomBytes(IV_BYTES);
  const cipher = createCipheriv("aes-256-gcm", keyFor(secret, purpose), iv);
  cipher.setAAD(Buffer.from(purpose));
  const body = Buffer.concat([cipher.update(plain), cipher.final()]);
  return [FORM, text(iv), text(cipher.getAuthTag()), text(body)].join(".");
}

/** The sealed bytes; null when the secret or the purpose differs, or the text was altered. */
export function unseal(secret: string, purpose: string, sealed: string): Uint8Array | null {
  const [form, iv, tag, body, ...rest] = sealed.split(".");
  if (form !== FORM || !iv || !tag || body === undefined || rest.length > 0) return null;
  try {
    const decipher = createDecipheriv("aes-256-gcm", keyFor(secret, purpose), Buffer.from(iv, "base64url"), {
      authTagLength: 16,
    });
    decipher.setAAD(Buffer.from(purpose));
    decipher.setAuthTag(Buffer.from(tag, "base64url"));
    return new Uint8Array(Buffer.concat([decipher.update(Buffer.from(body, "base64url")), decipher.final()]));
  } catch {
    return null; // the authentication tag does not match
  }
}
