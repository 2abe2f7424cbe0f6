/** People of the studio: accounts, roles and invitations. Every function is synchronous; callers provide the transaction. */
import { and, asc, desc, eq } from "drizzle-orm";
import { accountTable, invitationTable, memberTable, userTable } from "#db/auth-schema.ts";
import type { Db } from "#db/connection.ts";
import { parseRoles, type Role } from "#lib/policy/can.ts";
import { ORGANIZATION_ID } from "./studio-repo.ts";

/** Shown instead of a name when the account is gone. */
export const FORMER_MEMBER = "Somebody who has left";

export interface StudioPerson {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly roles: readonly Role[];
  /** ms since the epoch. */
  readonly since: number;
}

export interface NewAccount {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly passwordHash: string;
  readonly roles: readonly Role[];
  readonly at: number;
}

export interface Invitation {
  readonly id: string;
  readonly email: string;
  readonly name: string | null;
  readonly roles: readonly Role[];
  readonly status: "pending" | "accepted" | "revoked";
  readonly createdAt: number;
  readonly expiresAt: number;
  readonly inviterId: string;
}

const personColumns = {
  id: userTable.id,
  name: userTable.name,
  email: userTable.email,
  role: memberTable.role,
  since: memberTable.createdAt,
};

export function listMembers(db: Db): StudioPerson[] {
  const rows = db.orm
    .select(personColumns)
    .from(memberTable)
    .innerJoin(userTable, eq(userTable.id, memberTable.userId));
  return rows.orderBy(asc(userTable.name), asc(userTable.id)).all().map(toPerson);
}

export function readPerson(db: Db, userId: string): StudioPerson | undefined {
  const rows = db.orm
    .select(personColumns)
    .from(memberTable)
    .innerJoin(userTable, eq(userTable.id, memberTable.userId));
  const row = rows.where(eq(userTable.id, userId)).get();
  return row && toPerson(row);
}

/** A current member, by address (lower case). */
export function readPersonByEmail(db: Db, email: string): StudioPerson | undefined {
  const rows = db.orm
    .select(personColumns)
    .from(memberTable)
    .innerJoin(userTable, eq(userTable.id, memberTable.userId));
  const row = rows.where(eq(userTable.email, email)).get();
  return row && toPerson(row);
}

/** Names by id, including people who have left, since plans and comments keep their authors. */
export function namesById(db: Db): Map<string, string> {
  const rows = db.orm.select({ id: userTable.id, name: userTable.name }).from(userTable).all();
  return new Map(rows.map((row) => [row.id, row.name]));
}

/** The id of the person with this address (lower case), current or former. */
export function userIdByEmail(db: Db, email: string): string | undefined {
  return db.orm.select({ id: userTable.id }).from(userTable).where(eq(userTable.email, email)).get()?.id;
}

/** Creates an account with a password, as a member of the studio. Throws when the address is taken. */
export function insertAccount(db: Db, made: NewAccount): void {
  const at = new Date(made.at);
  db.orm
    .insert(userTable)
    .values({ id: made.id, name: made.name, email: made.email, createdAt: at, updatedAt: at })
    .run();
  giveAccess(db, made);
}

/** Reinstates somebody who had left, under the same id, with a new password and these roles. */
export function returnAccount(db: Db, back: NewAccount): void {
  db.orm
    .update(userTable)
    .set({ name: back.name, updatedAt: new Date(back.at) })
    .where(eq(userTable.id, back.id))
    .run();
  db.orm.delete(accountTable).where(eq(accountTable.userId, back.id)).run();
  giveAccess(db, back);
}

function giveAccess(db: Db, who: NewAccount): void {
  const at = new Date(who.at);
  const times = { createdAt: at, updatedAt: at };
  db.orm
    .insert(accountTable)
    .values({
      id: who.id,
      accountId: who.id,
      providerId: "credential",
      userId: who.id,
      password: who.passwordHash,
      ...times,
    })
    .run();
  db.orm
    .insert(memberTable)
    .values({ id: who.id, organizationId: ORGANIZATION_ID, userId: who.id, role: who.roles.join(","), createdAt: at })
    .run();
}

export function setName(db: Db, userId: string, name: string, at: number): void {
  db.orm
    .update(userTable)
    .set({ name, updatedAt: new Date(at) })
    .where(eq(userTable.id, userId))
    .run();
}

/** `email` in lower case. Throws when it is taken. */
export function setEmail(db: Db, userId: string, email: string, at: number): void {
  db.orm
    .update(userTable)
    .set({ email, updatedAt: new Date(at) })
    .where(eq(userTable.id, userId))
    .run();
}

/** The library's hash of somebody's password; undefined for who has none. */
export const passwordHashOf = (db: Db, userId: string): string | undefined =>
  db.orm.select({ hash: accountTable.password }).from(accountTable).where(eq(accountTable.userId, userId)).get()
    ?.hash ?? undefined;

export function setRoles(db: Db, userId: string, roles: readonly Role[]): void {
  db.orm
    .update(memberTable)
    .set({ role: roles.join(",") })
    .where(eq(memberTable.userId, userId))
    .run();
}

/** Removes membership and password. The name stays, for plans and comments. */
export function removeAccess(db: Db, userId: string): void {
  db.orm.delete(memberTable).where(eq(memberTable.userId, userId)).run();
  db.orm.delete(accountTable).where(eq(accountTable.userId, userId)).run();
}

export function insertInvitation(db: Db, made: Omit<Invitation, "status">): void {
  db.orm
    .insert(invitationTable)
    .values({
      id: made.id,
      organizationId: ORGANIZATION_ID,
      email: made.email,
      name: made.name,
      role: made.roles.join(","),
      expiresAt: new Date(made.expiresAt),
      createdAt: new Date(made.createdAt),
      inviterId: made.inviterId,
    })
    .run();
}

export function readInvitation(db: Db, id: string): Invitation | undefined {
  const row = db.orm.select().from(invitationTable).where(eq(invitationTable.id, id)).get();
  return row && toInvitation(row);
}

/** Pending invitations, newest first, including expired ones, so that a manager sees that a link has expired. */
export function listPendingInvitations(db: Db): Invitation[] {
  const rows = db.orm.select().from(invitationTable).where(eq(invitationTable.status, "pending"));
  return rows.orderBy(desc(invitationTable.createdAt), asc(invitationTable.id)).all().map(toInvitation);
}

/** Marks a pending invitation as accepted or revoked; false when it was no longer pending. */
export function settleInvitation(db: Db, id: string, status: "accepted" | "revoked"): boolean {
  const pending = and(eq(invitationTable.id, id), eq(invitationTable.status, "pending"));
  return db.orm.update(invitationTable).set({ status }).where(pending).run().changes > 0;
}

/** Revokes the pending links for an address. */
export function revokeInvitationsFor(db: Db, email: string): void {
  const pending = and(eq(invitationTable.email, email), eq(invitationTable.status, "pending"));
  db.orm.update(invitationTable).set({ status: "revoked" }).where(pending).run();
}

/** Revokes the pending links made by one person. Returns how many there were. */
export function revokeInvitationsBy(db: Db, inviterId: string): number {
  const pending = and(eq(invitationTable.inviterId, inviterId), eq(invitationTable.status, "pending"));
  return db.orm.update(invitationTable).set({ status: "revoked" }).where(pending).run().changes;
}

function toPerson(row: { id: string; name: string; email: string; role: string; since: Date }): StudioPerson {
  return { id: row.id, name: row.name, email: row.email, roles: parseRoles(row.role), since: row.since.getTime() };
}

function toInvitation(row: typeof invitationTable.$inferSelect): Invitation {
  return {
    id: row.id,
    email: row.email,
    name: row.name,
    roles: parseRoles(row.role ?? ""),
    status: row.status,
    createdAt: row.createdAt.getTime(),
    expiresAt: row.expiresAt.getTime(),
    inviterId: row.inviterId,
  };
}
