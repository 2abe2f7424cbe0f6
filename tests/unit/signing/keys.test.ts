import { verify } from "node:crypto";
import { afterEach, describe, expect, it } from "vitest";
import { readSigningKey } from "#db/repos/signing-key-repo.ts";
import { publicKeyOf, signWithSeed } from "#server/signing/ed25519.ts";
import { createSigningKeys } from "#server/signing/keys.ts";
import { seal, unseal } from "#server/signing/seal.ts";
import vectors from "#tests/fixtures/rfc8032-ed25519.json" with { type: "json" };
import { type TempDb, tempDb } from "#tests/support/temp-db.ts";

const bytes = (hex: string) => new Uint8Array(Buffer.from(hex, "hex"));
const hex = (b: Uint8Array) => Buffer.from(b).toString("hex");
let temp: TempDb | undefined;
afterEach(() => {
  temp?.remove();
  temp = undefined;
});

describe("Ed25519", () => {
  // Source: RFC 8032 section 7.1, TEST 1 to 3.
  it.each(vectors.vectors)("signs as $name of RFC 8032 says", ({ secret, public: key, message, signature }) => {
    expect(hex(publicKeyOf(bytes(secret)))).toBe(key);
    expect(hex(signWithSeed(bytes(secret), bytes(message)))).toBe(signature);
  });

  it("takes no seed of another length", () => {
    expect(() => publicKeyOf(new Uint8Array(31))).toThrow(RangeError);
  });
});

describe("sealing", () => {
  it("opens with the same secret and purpose only, and when nothing was altered", () => {
    const plain = new Uint8Array([1, 2, 3]);
    const sealed = seal("one secret", "a key", plain);
    expect(unseal("one secret", "a key", sealed)).toEqual(plain);
    expect(unseal("another secret", "a key", sealed)).toBeNull();
    expect(unseal("one secret", "another key", sealed)).toBeNull();
    const [form, iv, tag, body] = sealed.split(".") as [string, string, string, string];
    const flipped = Buffer.from(body, "base64url");
    flipped[0] = (flipped[0] ?? 0) ^ 1;
    expect(unseal("one secret", "a key", [form, iv, tag, flipped.toString("base64url")].join("."))).toBeNull();
    // A short tag would be easier to guess.
    expect(unseal("one secret", "a key", [form, iv, tag.slice(0, 8), body].join("."))).toBeNull();
    for (const broken of ["", "v1", "v2.a.b.c", "v1...", `${sealed}.x`]) {
      expect(unseal("one secret", "a key", broken)).toBeNull();
    }
  });

  it("never seals twice alike", () => {
    const plain = new Uint8Array(32);
    expect(seal("s", "p", plain)).not.toBe(seal("s", "p", plain));
  });
});

describe("the studio's key", () => {
  it("is made on first need, kept, and verifies what it signs", () => {
    temp = tempDb();
    const db = temp.open();
    const setup = { db, secret: "the server's secret", now: () => 5 };
    const keys = createSigningKeys(setup);
    keys.check();
    expect(readSigningKey(db)).toBeUndefined();
    const message = new TextEncoder().encode("a card");
    const signature = keys.sign(message);
    const again = createSigningKeys(setup);
    again.check();
    expect([again.keyId, again.publicKey]).toEqual([keys.keyId, keys.publicKey]);
    const key = { key: { kty: "OKP", crv: "Ed25519", x: again.publicKey }, format: "jwk" as const };
    expect(verify(null, message, key, signature)).toBe(true);
    expect(verify(null, new TextEncoder().encode("another"), key, signature)).toBe(false);
  });

  it("keeps its private part sealed", () => {
    temp = tempDb();
    const db = temp.open();
    const keys = createSigningKeys({ db, secret: "the server's secret", now: () => 5 });
    const stored = readSigningKey(db);
    expect(stored).toBeUndefined();
    const { publicKey } = keys;
    const made = readSigningKey(db);
    expect(made?.publicKey).toBe(publicKey);
    expect(made?.sealedPrivateKey).toMatch(/^v1\.[\w-]{16}\.[\w-]{22}\.[\w-]{43}$/);
  });

  it("says in one sentence that the secret is another one, and makes no new key", () => {
    temp = tempDb();
    const db = temp.open();
    const { keyId } = createSigningKeys({ db, secret: "the server's secret", now: () => 5 });
    const wrong = createSigningKeys({ db, secret: "some other secret", now: () => 6 });
    for (const use of [() => wrong.check(), () => wrong.sign(new Uint8Array()), () => wrong.publicKey]) {
      expect(use).toThrow(/^The server's secret is not the one that this studio's signing key was encrypted with\./);
    }
    expect(readSigningKey(db)?.id).toBe(keyId);
  });
});
