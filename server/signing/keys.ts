/**
 * The studio's Ed25519 key, which signs cue cards: created when it is first needed and kept in the database, its private
 * part encrypted under the server's secret. Devices hold the public part and verify cards without a network.
 */
import { createHash, randomBytes } from "node:crypto";
import type { Db } from "#db/connection.ts";
import {
  insertSigningKey,
  readSigningKey,
  readSigningKeyById,
  type StoredKey,
  VERIFIES_ONLY,
} from "#db/repos/signing-key-repo.ts";
import { publicKeyOf, signWithSeed } from "./ed25519.ts";
import { seal, unseal } from "./seal.ts";

export interface SigningKeys {
  /** The id of the key that signs now. */
  readonly keyId: string;
  /** base64url, 32 bytes. */
  readonly publicKey: string;
  /** The public part of a key, current or older, by its id; undefined for a key that is not this studio's. */
  publicKeyOf(keyId: string): string | undefined;
  /** The 64 bytes of an Ed25519 signature. Throws SigningKeyError when the secret cannot decrypt the key. */
  sign(bytes: Uint8Array): Uint8Array;
  /** Throws SigningKeyError when there is a key that the secret cannot decrypt. Creates none. */
  check(): void;
}

/** There is a key, but it cannot be used; `message` is for the person who runs the server. Recognised by its name. */
export class SigningKeyError extends Error {
  override readonly name = "SigningKeyError";
}

const WRONG_SECRET =
  "The server's secret is not the one that this studio's signing key was encrypted with. Nothing was changed. Start the server with its former secret (SPRINGLINE_SECRET, or the file named secret in its data folder).";

export interface SigningKeysSetup {
  readonly db: Db;
  readonly secret: string;
  now(): number;
}

/** Lazy: nothing is read or created before it is first used. */
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
      return stored && isOurs(setup.secret, stored) ? stored.publicKey : undefined;
    },
    sign: (bytes) => signWithSeed(current().seed, bytes),
    check() {
      const stored = readSigningKey(setup.db);
      if (stored) open(setup, stored);
    },
  };
}

/** Unsealing only succeeds together with the public part that it was sealed for. */
function isOurs(secret: string, { id, publicKey, sealedPrivateKey }: StoredKey): boolean {
  if (!sealedPrivateKey.startsWith(VERIFIES_ONLY))
    return unseal(secret, purposeOf(id, publicKey), sealedPrivateKey) !== null;
  return unseal(secret, trustOf(id, publicKey), sealedPrivateKey.slice(VERIFIES_ONLY.length)) !== null;
}

/**
 * What stands in the place of the private part of a key whose signatures are checked but that signs no more: the key of a studio
 * that was imported. Nobody who can only write to the database file can make one.
 */
export const sealedTrust = (secret: string, { id, publicKey }: Pick<StoredKey, "id" | "publicKey">): string =>
  VERIFIES_ONLY + seal(secret, trustOf(id, publicKey), new Uint8Array());

/** The public keys among these rows that this secret vouches for. */
export const ownKeys = <K extends StoredKey>(secret: string, keys: readonly K[]): K[] =>
  keys.filter((key) => isOurs(secret, key));

const trustOf = (keyId: string, publicKey: string) => `studio public key ${keyId} ${publicKey}`;
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
