/** The studio's signing keys. The private part is encrypted before it is passed in. */
import { desc, eq } from "drizzle-orm";
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

/** The newest key, which signs. Undefined until the first one is made. */
export function readSigningKey(db: Db): StoredKey | undefined {
  return db.orm
    .select()
    .from(signingKeyTable)
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
