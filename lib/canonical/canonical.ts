/** One byte form for each value: RFC 8785 canonical JSON, and the SHA-256 that names it. Runs in any runtime. */
import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";
import canonicalize from "canonicalize";

/**
 * Canonical JSON of plain data (RFC 8785). Throws on what JSON cannot hold: NaN, infinities, lone surrogates,
 * undefined.
 */
export function canonicalJson(value: unknown): string {
  const text = canonicalize(value);
  if (text === undefined) throw new TypeError("canonical JSON cannot hold this value");
  return text;
}

/** SHA-256 of a text's UTF-8 bytes, 64 hex digits. */
export const sha256Hex = (text: string): string => bytesToHex(sha256(utf8ToBytes(text)));

/** The name of a plan's exact content: SHA-256 over its canonical JSON. */
export const contentHash = (value: unknown): string => sha256Hex(canonicalJson(value));
