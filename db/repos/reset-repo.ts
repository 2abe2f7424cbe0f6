/** Reset links, stored in the sign-in library's `verification` table. Only a hash of the token is stored. */
import { and, asc, eq, like, lt } from "drizzle-orm";
import { accountTable, verificationTable } from "#db/auth-schema.ts";
import type { Db } from "#db/connection.ts";

export interface StoredReset {
  readonly id: string;
  readonly userId: string;
  /** The id of the person who made it, "server" for the command, "mail" for one that its person asked for. */
  readonly madeBy: string;
  readonly used: boolean;
  readonly withdrawn: boolean;
  /** ms since the epoch. */
  readonly expiresAt: number;
}

export interface NewReset extends Pick<StoredReset, "id" | "userId" | "madeBy" | "expiresAt"> {
  readonly tokenHash: string;
  readonly at: number;
}

const PREFIX = "password-reset:";
const keyOf = (tokenHash: string): string => `${PREFIX}${tokenHash}`;
const OURS = like(verificationTable.identifier, `${PREFIX}%`);

export function insertReset(db: Db, made: NewReset): void {
  const at = new Date(made.at);
  const value = JSON.stringify({ userId: made.userId, madeBy: made.madeBy, used: false });
  const row = { id: made.id, identifier: keyOf(made.tokenHash), value, createdAt: at, updatedAt: at };
  db.orm
    .insert(verificationTable)
    .values({ ...row, expiresAt: new Date(made.expiresAt) })
    .run();
}

export function readReset(db: Db, tokenHash: string): StoredReset | undefined {
  const row = db.orm
    .select()
    .from(verificationTable)
    .where(eq(verificationTable.identifier, keyOf(tokenHash)))
    .get();
  return row && toReset(row);
}

/** Links that were neither used nor withdrawn, including expired ones, the next to expire first. */
export function listOpenResets(db: Db): StoredReset[] {
  const rows = db.orm.select().from(verificationTable).where(OURS).orderBy(asc(verificationTable.expiresAt)).all();
  return rows.map(toReset).filter((reset) => !reset.used && !reset.withdrawn);
}

export const spendReset = (db: Db, reset: StoredReset): void => settle(db, reset, { used: true });

/** The row stays, so that a person who opens the link is told. */
export const withdrawReset = (db: Db, reset: StoredReset): void => settle(db, reset, { withdrawn: true });

function settle(db: Db, reset: StoredReset, how: Partial<StoredReset>): void {
  const { id, expiresAt: _, ...kept } = { ...reset, ...how };
  db.orm
    .update(verificationTable)
    .set({ value: JSON.stringify(kept) })
    .where(eq(verificationTable.id, id))
    .run();
}

/** Deletes a person's unused links, or those that `madeBy` made; a used one stays, so that it is recognised as used. */
export function dropOpenResetsOf(db: Db, userId: string, madeBy?: string): void {
  const theirs = (reset: StoredReset) => reset.userId === userId && (madeBy ?? reset.madeBy) === reset.madeBy;
  for (const { id } of listOpenResets(db).filter(theirs))
    db.orm.delete(verificationTable).where(eq(verificationTable.id, id)).run();
}

/** Deletes links that expired before `at` (ms). */
export function forgetResets(db: Db, at: number): void {
  db.orm
    .delete(verificationTable)
    .where(and(OURS, lt(verificationTable.expiresAt, new Date(at))))
    .run();
}

/** Changes a person's password. False when they have none, because they are no longer in the studio. */
export function setPasswordHash(db: Db, userId: string, passwordHash: string, at: number): boolean {
  const of = and(eq(accountTable.userId, userId), eq(accountTable.providerId, "credential"));
  const set = { password: passwordHash, updatedAt: new Date(at) };
  return db.orm.update(accountTable).set(set).where(of).run().changes > 0;
}

function toReset(row: typeof verificationTable.$inferSelect): StoredReset {
  // Only written by `insertReset` and `settle`; early links have no `withdrawn`.
  const value = JSON.parse(row.value) as Omit<StoredReset, "id" | "expiresAt" | "withdrawn"> & Partial<StoredReset>;
  return { withdrawn: false, ...value, id: row.id, expiresAt: row.expiresAt.getTime() };
}
