/** Sessions: whose, until when, with which roles. The sign-in library writes the rows. */
import { and, eq, isNull } from "drizzle-orm";
import { sessionTable } from "#db/auth-schema.ts";
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";
import { deviceTable } from "#db/schema.ts";

export interface SessionRow {
  readonly userId: string;
  readonly name: string;
  readonly email: string;
  /** ms since the epoch. */
  readonly expiresAt: number;
  /** The member's stored roles; null when the person has left the studio. */
  readonly role: string | null;
}

const sessionStatement = oncePerDatabase(({ raw }) =>
  raw.prepare<[string], SessionRow>(
    `SELECT s.user_id AS userId, u.name AS name, u.email AS email, s.expires_at AS expiresAt, m.role AS role
       FROM session s JOIN user u ON u.id = s.user_id LEFT JOIN member m ON m.user_id = s.user_id WHERE s.id = ?`,
  ),
);

/** One session by id, never cached; undefined when it has ended. Read for every open socket twice a second. */
export const readSession = (db: Db, sessionId: string): SessionRow | undefined => sessionStatement(db).get(sessionId);

/** Ends every session of a person. Returns how many there were. */
export function endSessionsOf(db: Db, userId: string): number {
  return db.orm.delete(sessionTable).where(eq(sessionTable.userId, userId)).run().changes;
}

/** The paired device whose token has this hash, unless it was removed. */
export function deviceByTokenHash(db: Db, tokenHash: string): { id: string; roomId: string } | undefined {
  const known = and(eq(deviceTable.tokenHash, tokenHash), isNull(deviceTable.revokedAt));
  return db.orm.select({ id: deviceTable.id, roomId: deviceTable.roomId }).from(deviceTable).where(known).get();
}
