/**
 * The signature of the cue card against the published vectors of RFC 8032 section 7.1, in both programs that handle it:
 * the server signs with OpenSSL through node:crypto, the device verifies with @noble/ed25519.
 */
import { createPrivateKey, createPublicKey, sign, verify } from "node:crypto";
import * as noble from "@noble/ed25519";
import { sha512 } from "@noble/hashes/sha2.js";
import { describe, expect, test } from "vitest";
import fixture from "#tests/fixtures/rfc8032-ed25519.json" with { type: "json" };

noble.hashes.sha512 = sha512;
const bytes = (hex: string) => new Uint8Array(Buffer.from(hex, "hex"));
const hex = (data: Uint8Array) => Buffer.from(data).toString("hex");
// PKCS #8 and SPKI wrappers of a raw Ed25519 key, RFC 8410 sections 7 and 4.
const privateKey = (secret: string) =>
  createPrivateKey({
    key: Buffer.from(`302e020100300506032b657004220420${secret}`, "hex"),
    format: "der",
    type: "pkcs8",
  });
const publicKey = (key: string) =>
  createPublicKey({ key: Buffer.from(`302a300506032b6570032100${key}`, "hex"), format: "der", type: "spki" });

describe.each(fixture.vectors)("RFC 8032 $name", ({ secret, public: key, message, signature }) => {
  test("node:crypto signs and verifies it", () => {
    expect(hex(sign(null, bytes(message), privateKey(secret)))).toBe(signature);
    expect(verify(null, bytes(message), publicKey(key), bytes(signature))).toBe(true);
  });

  test("@noble/ed25519 signs and verifies it", () => {
    expect(hex(noble.getPublicKey(bytes(secret)))).toBe(key);
    expect(hex(noble.sign(bytes(message), bytes(secret)))).toBe(signature);
    expect(noble.verify(bytes(signature), bytes(message), bytes(key), { zip215: false })).toBe(true);
  });

  test("neither accepts the signature with one bit flipped", () => {
    const bad = bytes(signature);
    bad[40] = (bad[40] ?? 0) ^ 1;
    expect(verify(null, bytes(message), publicKey(key), bad)).toBe(false);
    expect(noble.verify(bad, bytes(message), bytes(key), { zip215: false })).toBe(false);
  });
});
