/** Reset links: rows of the sign-in library's table for such things. Only a hash of the link's token is stored. */
import { and, eq, like, lt } from "drizzle-orm";
import { account, verification } from "#db/auth-schema.ts";
import type { Db } from "#db/connection.ts";

export interface StoredReset {
  readonly userId: string;
  /** Who made it: a person's id, or "server" for the command. */
  readonly madeBy: string;
  readonly used: boolean;
  /** ms since the epoch. */
  readonly expiresAt: number;
}

const PREFIX = "password-reset:";
const keyOf = (tokenHash: string): string => `${PREFIX}${tokenHash}`;

export function insertReset(
  db: Db,
  made: Omit<StoredReset, "used"> & { readonly id: string; readonly tokenHash: string; readonly at: number },
): void {
  const at = new Date(made.at);
  const value = JSON.stringify({ userId: made.userId, madeBy: made.madeBy, used: false });
  const row = { id: made.id, identifier: keyOf(made.tokenHash), value, createdAt: at, updatedAt: at };
  db.orm
    .insert(verification)
    .values({ ...row, expiresAt: new Date(made.expiresAt) })
    .run();
}

export function readReset(db: Db, tokenHash: string): StoredReset | undefined {
  const row = db.orm
    .select()
    .from(verification)
    .where(eq(verification.identifier, keyOf(tokenHash)))
    .get();
  if (!row) return undefined;
  const value = JSON.parse(row.value) as Omit<StoredReset, "expiresAt">; // written by insertReset and useReset only
  return { ...value, expiresAt: row.expiresAt.getTime() };
}

export function spendReset(db: Db, tokenHash: string, reset: StoredReset): void {
  const { expiresAt: _, ...kept } = reset;
  const value = JSON.stringify({ ...kept, used: true });
  db.orm
    .update(verification)
    .set({ value })
    .where(eq(verification.identifier, keyOf(tokenHash)))
    .run();
}

/** Links of one person that were not used stop working; a used one stays, to be told apart from one never made. */
export function dropOpenResetsOf(db: Db, userId: string): void {
  const open = JSON.stringify({ userId }).slice(0, -1);
  const of = and(like(verification.identifier, `${PREFIX}%`), like(verification.value, `${open},%"used":false}`));
  db.orm.delete(verification).where(of).run();
}

/** Links that ran out before `at` (ms) are forgotten. */
export function forgetResets(db: Db, at: number): void {
  const old = and(like(verification.identifier, `${PREFIX}%`), lt(verification.expiresAt, new Date(at)));
  db.orm.delete(verification).where(old).run();
}

/** Gives a person who has a password another. False when there is none to change: they are not of the studio. */
export function setPasswordHash(db: Db, userId: string, passwordHash: string, at: number): boolean {
  const of = and(eq(account.userId, userId), eq(account.providerId, "credential"));
  const set = { password: passwordHash, updatedAt: new Date(at) };
  return db.orm.update(account).set(set).where(of).run().changes > 0;
}
