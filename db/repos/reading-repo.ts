/** What a lead had in front of them when they opened a sign-off, so that what they sign can be compared with it. */
import { and, desc, eq, notInArray } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { planReading } from "#db/schema.ts";
import type { Plan } from "#lib/plan/schema.ts";

export interface Reading {
  readonly planId: string;
  readonly userId: string;
  /** SHA-256 (hex) of the plan as it was read. */
  readonly hash: string;
  readonly plan: Plan;
  /** ms since the epoch. */
  readonly at: number;
}

/** A lead who reads while others write would pile up readings: the newest of these many are kept. */
const KEPT = 10;

export function putReading(db: Db, reading: Reading): void {
  const { planId, userId, hash, at } = reading;
  db.orm
    .insert(planReading)
    .values({ planId, userId, hash, planJson: JSON.stringify(reading.plan), at })
    .onConflictDoUpdate({ target: [planReading.planId, planReading.userId, planReading.hash], set: { at } })
    .run();
  const mine = and(eq(planReading.planId, planId), eq(planReading.userId, userId));
  const newest = db.orm.select({ hash: planReading.hash }).from(planReading).where(mine);
  const keep = newest.orderBy(desc(planReading.at), desc(planReading.hash)).limit(KEPT).all();
  const old = notInArray(
    planReading.hash,
    keep.map((row) => row.hash),
  );
  db.orm.delete(planReading).where(and(mine, old)).run();
}

/** What this person read under this hash, if they ever did. */
export function readReading(db: Db, planId: string, userId: string, hash: string): Reading | undefined {
  const one = and(eq(planReading.planId, planId), eq(planReading.userId, userId), eq(planReading.hash, hash));
  const row = db.orm.select().from(planReading).where(one).get();
  return row && toReading(row);
}

/** What this person read last. */
export function newestReading(db: Db, planId: string, userId: string): Reading | undefined {
  const mine = and(eq(planReading.planId, planId), eq(planReading.userId, userId));
  const row = db.orm.select().from(planReading).where(mine).orderBy(desc(planReading.at)).limit(1).get();
  return row && toReading(row);
}

function toReading({ planJson, ...row }: typeof planReading.$inferSelect): Reading {
  return { ...row, plan: JSON.parse(planJson) as Plan }; // written by putReading only
}
