/** Names that outlive what they name: UUID version 5, RFC 9562 §5.5. */
import { sha1 } from "@noble/hashes/legacy.js";
import { bytesToHex, concatBytes, hexToBytes, utf8ToBytes } from "@noble/hashes/utils.js";

/**
 * The UUID of `name` in a namespace, which is a UUID itself; lower case. SHA-1 is what version 5 is defined by: it has to be the
 * same everywhere, not hard to invert.
 */
export function uuidOfName(namespace: string, name: string): string {
  const bytes = sha1(concatBytes(hexToBytes(namespace.replaceAll("-", "")), utf8ToBytes(name))).slice(0, 16);
  // The version in the upper half of octet 6, the variant in the two upper bits of octet 8.
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x50;
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  const hex = bytesToHex(bytes);
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}
