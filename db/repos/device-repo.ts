/** Cue devices and their pairing codes. Codes and tokens are passed in as hashes; a row is revoked, never deleted. */
import { and, asc, eq, gt, isNotNull, isNull } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";
import { deviceTable } from "#db/schema.ts";

export interface NewDevice {
  readonly id: string;
  readonly name: string;
  readonly roomId: string;
  readonly codeHash: string;
  /** ms since the epoch. */
  readonly codeExpiresAt: number;
  readonly createdBy: string;
}

/** A device without anything secret about it. Times are ms since the epoch. */
export interface DeviceRow {
  readonly id: string;
  readonly name: string;
  readonly roomId: string;
  readonly codeExpiresAt: number | null;
  readonly pairedAt: number | null;
  readonly lastSeenAt: number | null;
}

const shown = {
  id: deviceTable.id,
  name: deviceTable.name,
  roomId: deviceTable.roomId,
  codeExpiresAt: deviceTable.codeExpiresAt,
  pairedAt: deviceTable.pairedAt,
  lastSeenAt: deviceTable.lastSeenAt,
};

export function insertDevice(db: Db, made: NewDevice): void {
  db.orm.insert(deviceTable).values(made).run();
}

/** Every device that was not removed, by name. */
export function listDeviceRows(db: Db): DeviceRow[] {
  return db.orm
    .select(shown)
    .from(deviceTable)
    .where(isNull(deviceTable.revokedAt))
    .orderBy(asc(deviceTable.name))
    .all();
}

export function readDevice(db: Db, id: string): DeviceRow | undefined {
  const one = and(eq(deviceTable.id, id), isNull(deviceTable.revokedAt));
  return db.orm.select(shown).from(deviceTable).where(one).get();
}

const makerStatement = oncePerDatabase((db) =>
  db.raw
    .prepare<[string, number], string>(
      "SELECT created_by FROM device WHERE code_hash = ? AND code_expires_at > ? AND revoked_at IS NULL",
    )
    .pluck(),
);

/** The person who made the valid code with this hash; undefined for none. Cheap, since anybody may guess. */
export const makerOfCode = (db: Db, codeHash: string, now: number): string | undefined =>
  makerStatement(db).get(codeHash, now);

/** Ends a person's unused codes. Returns how many there were. */
export function endCodesBy(db: Db, createdBy: string, now: number): number {
  const waiting = and(
    eq(deviceTable.createdBy, createdBy),
    gt(deviceTable.codeExpiresAt, now),
    isNotNull(deviceTable.codeHash),
  );
  return db.orm.update(deviceTable).set({ codeHash: null, codeExpiresAt: now }).where(waiting).run().changes;
}

/** Uses up a valid code, in one statement, so that of two devices with one code only one is paired. */
export function claimDevice(db: Db, codeHash: string, tokenHash: string, now: number): DeviceRow | undefined {
  const waiting = and(
    eq(deviceTable.codeHash, codeHash),
    gt(deviceTable.codeExpiresAt, now),
    isNull(deviceTable.revokedAt),
  );
  const set = { tokenHash, codeHash: null, codeExpiresAt: null, pairedAt: now, lastSeenAt: now };
  return db.orm.update(deviceTable).set(set).where(waiting).returning(shown).get();
}

export function markDeviceSeen(db: Db, id: string, now: number): void {
  db.orm.update(deviceTable).set({ lastSeenAt: now }).where(eq(deviceTable.id, id)).run();
}

/** Its token and its code stop working. False when there is no such device. */
export function revokeDevice(db: Db, id: string, now: number): boolean {
  const one = and(eq(deviceTable.id, id), isNull(deviceTable.revokedAt));
  return (
    db.orm.update(deviceTable).set({ revokedAt: now, tokenHash: null, codeHash: null }).where(one).run().changes > 0
  );
}

/** Also of a device that was removed. */
export const nameOfDevice = (db: Db, id: string): string | undefined =>
  db.orm.select({ name: deviceTable.name }).from(deviceTable).where(eq(deviceTable.id, id)).get()?.name;
