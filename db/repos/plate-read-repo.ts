/** What a lead has read of a plan, plate by plate: the hash of each item as it was when they marked it read. */
import { and, eq } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { plateReadTable } from "#db/review-schema.ts";

interface PlateRead {
  readonly itemId: string;
  /** SHA-256 (hex) of the item's canonical JSON. */
  readonly hash: string;
}

/** `at`: ms since the epoch. A plate that is marked again keeps its last hash. */
export function putPlatesRead(
  db: Db,
  by: { readonly planId: string; readonly userId: string; readonly at: number },
  plates: readonly PlateRead[],
): void {
  for (const { itemId, hash } of plates) {
    db.orm
      .insert(plateReadTable)
      .values({ ...by, itemId, hash })
      .onConflictDoUpdate({
        target: [plateReadTable.planId, plateReadTable.userId, plateReadTable.itemId],
        set: { hash, at: by.at },
      })
      .run();
  }
}

/** Takes the mark back where it still is of this hash. */
export function removePlatesRead(
  db: Db,
  { planId, userId }: { readonly planId: string; readonly userId: string },
  plates: readonly PlateRead[],
): void {
  for (const { itemId, hash } of plates) {
    const one = and(eq(plateReadTable.planId, planId), eq(plateReadTable.userId, userId));
    db.orm
      .delete(plateReadTable)
      .where(and(one, eq(plateReadTable.itemId, itemId), eq(plateReadTable.hash, hash)))
      .run();
  }
}

/** Hash by item. */
export function readPlatesRead(db: Db, planId: string, userId: string): Record<string, string> {
  const mine = and(eq(plateReadTable.planId, planId), eq(plateReadTable.userId, userId));
  const rows = db.orm.select().from(plateReadTable).where(mine).all();
  return Object.fromEntries(rows.map(({ itemId, hash }) => [itemId, hash]));
}
