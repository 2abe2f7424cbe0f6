/** Base64url without padding (RFC 4648 section 5), in any runtime. */
const ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/** The text of some bytes. */
export function toBase64url(bytes: Uint8Array): string {
  let text = "";
  for (let i = 0; i < bytes.length; i += 3) {
    const left = bytes.length - i;
    const group = ((bytes[i] ?? 0) << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    for (let k = 0; k < Math.min(4, left + 1); k += 1) text += ALPHABET[(group >> (18 - 6 * k)) & 63];
  }
  return text;
}

/** The bytes of a text, or null when it is not base64url without padding. */
export function fromBase64url(text: string): Uint8Array | null {
  if (!/^[A-Za-z0-9_-]*$/.test(text) || text.length % 4 === 1) return null;
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  let bits = 0;
  let held = 0;
  let at = 0;
  for (const sign of text) {
    bits = ((bits << 6) | ALPHABET.indexOf(sign)) & 0xffffff;
    held += 6;
    if (held >= 8) {
      held -= 8;
      bytes[at] = (bits >> held) & 255;
      at += 1;
    }
  }
  return bytes;
}
