/** The studio's signing keys. The private part is encrypted before it is passed in. */
import { asc, desc, eq, notLike } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { signingKeyTable } from "#db/schema.ts";

export interface StoredKey {
  readonly id: string;
  /** base64url, 32 bytes. */
  readonly publicKey: string;
  readonly sealedPrivateKey: string;
  /** ms since the epoch. */
  readonly createdAt: number;
}

/** How the column of the private part begins where there is none: such a key is only verified with. */
export const VERIFIES_ONLY = "verifies.";

/** Every key, the oldest first. */
export const listSigningKeys = (db: Db): StoredKey[] =>
  db.orm.select().from(signingKeyTable).orderBy(asc(signingKeyTable.createdAt), asc(signingKeyTable.id)).all();

/** The newest key that signs. Undefined until the first one is made. */
export function readSigningKey(db: Db): StoredKey | undefined {
  return db.orm
    .select()
    .from(signingKeyTable)
    .where(notLike(signingKeyTable.sealedPrivateKey, `${VERIFIES_ONLY}%`))
    .orderBy(desc(signingKeyTable.createdAt), desc(signingKeyTable.id))
    .limit(1)
    .get();
}

/** A key by its id, current or older: a card names the key that it is signed with. */
export function readSigningKeyById(db: Db, id: string): StoredKey | undefined {
  return db.orm.select().from(signingKeyTable).where(eq(signingKeyTable.id, id)).get();
}

export function insertSigningKey(db: Db, key: StoredKey): void {
  db.orm.insert(signingKeyTable).values(key).run();
}
