/** Cue devices and their pairing codes. Codes and tokens come here hashed; a row is revoked, never deleted. */
import { and, asc, eq, gt, isNotNull, isNull } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";
import { device } from "#db/schema.ts";

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
  id: device.id,
  name: device.name,
  roomId: device.roomId,
  codeExpiresAt: device.codeExpiresAt,
  pairedAt: device.pairedAt,
  lastSeenAt: device.lastSeenAt,
};

export function insertDevice(db: Db, made: NewDevice): void {
  db.orm.insert(device).values(made).run();
}

/** Every device that was not taken back, by name. */
export function listDevices(db: Db): DeviceRow[] {
  return db.orm.select(shown).from(device).where(isNull(device.revokedAt)).orderBy(asc(device.name)).all();
}

export function readDevice(db: Db, id: string): DeviceRow | undefined {
  const one = and(eq(device.id, id), isNull(device.revokedAt));
  return db.orm.select(shown).from(device).where(one).get();
}

const makerStatement = oncePerDatabase((db) =>
  db.raw
    .prepare<[string, number], string>(
      "SELECT created_by FROM device WHERE code_hash = ? AND code_expires_at > ? AND revoked_at IS NULL",
    )
    .pluck(),
);

/** Who made the code that has this hash and is still good; undefined when there is none. Anybody may guess, so it is cheap. */
export const makerOfCode = (db: Db, codeHash: string, now: number): string | undefined =>
  makerStatement(db).get(codeHash, now);

/** Codes made by one person that were not used yet pair nothing any more. Gives how many there were. */
export function endCodesBy(db: Db, createdBy: string, now: number): number {
  const waiting = and(eq(device.createdBy, createdBy), gt(device.codeExpiresAt, now), isNotNull(device.codeHash));
  return db.orm.update(device).set({ codeHash: null, codeExpiresAt: now }).where(waiting).run().changes;
}

/** Uses up a code that is still good: one statement, so that of two people with one code only one gets the device. */
export function claimDevice(db: Db, codeHash: string, tokenHash: string, now: number): DeviceRow | undefined {
  const waiting = and(eq(device.codeHash, codeHash), gt(device.codeExpiresAt, now), isNull(device.revokedAt));
  const set = { tokenHash, codeHash: null, codeExpiresAt: null, pairedAt: now, lastSeenAt: now };
  return db.orm.update(device).set(set).where(waiting).returning(shown).get();
}

export function markDeviceSeen(db: Db, id: string, now: number): void {
  db.orm.update(device).set({ lastSeenAt: now }).where(eq(device.id, id)).run();
}

/** Its token and its code open nothing from now on. False when there is no such device. */
export function revokeDevice(db: Db, id: string, now: number): boolean {
  const one = and(eq(device.id, id), isNull(device.revokedAt));
  return db.orm.update(device).set({ revokedAt: now, tokenHash: null, codeHash: null }).where(one).run().changes > 0;
}
