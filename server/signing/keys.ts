/**
 * The studio's Ed25519 key: made on first need, kept in the database with its private part sealed under the server's
 * secret, used to sign cue cards. Devices hold the public part and check cards with the network gone.
 */
import { createHash, randomBytes } from "node:crypto";
import type { Db } from "#db/connection.ts";
import { insertSigningKey, readSigningKey, readSigningKeyById, type StoredKey } from "#db/repos/signing-key-repo.ts";
import { publicKeyOf, signWithSeed } from "./ed25519.ts";
import { seal, unseal } from "./seal.ts";

export interface SigningKeys {
  /** Names the key that signs. */
  readonly keyId: string;
  /** base64url, 32 bytes. */
  readonly publicKey: string;
  /** The public part of a key by its id, an older one's too; undefined for one that this studio did not make. */
  publicKeyOf(keyId: string): string | undefined;
  /** The 64 bytes of an Ed25519 signature. Throws SigningKeyError when the secret does not open the key. */
  sign(bytes: Uint8Array): Uint8Array;
  /** Throws SigningKeyError when there is a key and the secret does not open it. Makes none. */
  check(): void;
}

/** The key is there but cannot be used; `message` is for the person who runs the server. Told apart by its name. */
export class SigningKeyError extends Error {
  override readonly name = "SigningKeyError";
}

const WRONG_SECRET =
  "The server's secret is not the one this studio's signing key was sealed with. Start the server with the secret it had before (SPRINGLINE_SECRET, or the file named secret in its data folder); nothing was changed.";

export interface SigningKeysSetup {
  readonly db: Db;
  readonly secret: string;
  now(): number;
}

/** Opens lazily: nothing is read or made before the first question. */
export function createSigningKeys(setup: SigningKeysSetup): SigningKeys {
  let opened: { stored: StoredKey; seed: Uint8Array } | undefined;
  const current = () => {
    opened ??= open(setup, readSigningKey(setup.db) ?? makeKey(setup));
    return opened;
  };
  return {
    get keyId() {
      return current().stored.id;
    },
    get publicKey() {
      return current().stored.publicKey;
    },
    publicKeyOf(keyId) {
      const stored = readSigningKeyById(setup.db, keyId);
      // The seal holds only for the public part that it was made with.
      const ours = stored && unseal(setup.secret, purposeOf(stored.id, stored.publicKey), stored.sealedPrivateKey);
      return ours ? stored.publicKey : undefined;
    },
    sign: (bytes) => signWithSeed(current().seed, bytes),
    check() {
      const stored = readSigningKey(setup.db);
      if (stored) open(setup, stored);
    },
  };
}

const purposeOf = (keyId: string, publicKey: string) => `studio signing key ${keyId} ${publicKey}`;

function makeKey({ db, secret, now }: SigningKeysSetup): StoredKey {
  const seed = new Uint8Array(randomBytes(32));
  const publicBytes = publicKeyOf(seed);
  const publicKey = Buffer.from(publicBytes).toString("base64url");
  const id = createHash("sha256").update(publicBytes).digest("hex").slice(0, 16);
  const sealedPrivateKey = seal(secret, purposeOf(id, publicKey), seed);
  const key = { id, publicKey, sealedPrivateKey, createdAt: now() };
  insertSigningKey(db, key);
  return key;
}

function open({ secret }: SigningKeysSetup, stored: StoredKey): { stored: StoredKey; seed: Uint8Array } {
  const seed = unseal(secret, purposeOf(stored.id, stored.publicKey), stored.sealedPrivateKey);
  if (!seed) throw new SigningKeyError(WRONG_SECRET);
  return { stored, seed };
}
