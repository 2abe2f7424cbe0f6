/** What a lead had read when they opened a sign-off, so that it can be compared with what they sign. */
import { and, asc, desc, eq, notInArray } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { planReadingTable } from "#db/schema.ts";
import type { Plan } from "#lib/plan/schema.ts";

export interface StoredReading {
  readonly planId: string;
  readonly userId: string;
  /** SHA-256 (hex) of the plan as it was read. */
  readonly hash: string;
  readonly plan: Plan;
  /** ms since the epoch. */
  readonly at: number;
}

export type ReadingHead = Pick<StoredReading, "hash" | "at">;

/** Readings kept per lead and plan: reading while others write adds many. */
const KEPT = 10;

/** `since`: the hash of the reading that changes are told from, which is kept however old it is. */
export function putReading(db: Db, reading: StoredReading, since?: string): void {
  const { planId, userId, hash, at } = reading;
  db.orm
    .insert(planReadingTable)
    .values({ planId, userId, hash, planJson: JSON.stringify(reading.plan), at })
    .onConflictDoUpdate({
      target: [planReadingTable.planId, planReadingTable.userId, planReadingTable.hash],
      set: { at },
    })
    .run();
  const mine = and(eq(planReadingTable.planId, planId), eq(planReadingTable.userId, userId));
  const newest = db.orm.select({ hash: planReadingTable.hash }).from(planReadingTable).where(mine);
  const keep = newest.orderBy(desc(planReadingTable.at), desc(planReadingTable.hash)).limit(KEPT).all();
  const old = notInArray(planReadingTable.hash, [
    ...keep.map((row) => row.hash),
    ...(since === undefined ? [] : [since]),
  ]);
  db.orm.delete(planReadingTable).where(and(mine, old)).run();
}

/** What this person read with this hash, if they did. */
export function readReading(db: Db, planId: string, userId: string, hash: string): StoredReading | undefined {
  const one = and(
    eq(planReadingTable.planId, planId),
    eq(planReadingTable.userId, userId),
    eq(planReadingTable.hash, hash),
  );
  const row = db.orm.select().from(planReadingTable).where(one).get();
  return row && toReading(row);
}

/** What this person has read, the oldest first. */
export function listReadings(db: Db, planId: string, userId: string): ReadingHead[] {
  const mine = and(eq(planReadingTable.planId, planId), eq(planReadingTable.userId, userId));
  const heads = db.orm.select({ hash: planReadingTable.hash, at: planReadingTable.at }).from(planReadingTable);
  return heads.where(mine).orderBy(asc(planReadingTable.at), asc(planReadingTable.hash)).all();
}

function toReading({ planJson, ...row }: typeof planReadingTable.$inferSelect): StoredReading {
  return { ...row, plan: JSON.parse(planJson) as Plan }; // written by putReading only
}
