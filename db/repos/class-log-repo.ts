/** What classes did, as their devices told it: written once, read for ever. */
import { and, count, desc, eq, gt, sql } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { classLog } from "#db/schema.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";

export interface StoredLog {
  readonly log: ClassLog;
  readonly roomId: string;
  readonly deviceId: string;
  /** ms since the epoch, by the server's clock. */
  readonly receivedAt: number;
}

interface LogRow {
  readonly key: string;
  readonly logJson: string;
}

/** `key`: under which it is kept, its session as a rule. `logJson`: canonical JSON of the log. */
export function insertClassLog(db: Db, { log, ...rest }: StoredLog, { key, logJson }: LogRow): void {
  const { kind, edition } = log;
  const { planId, number } = edition;
  const startedAt = Date.parse(log.startedAt);
  db.orm
    .insert(classLog)
    .values({ ...rest, sessionId: key, planId, number, kind, startedAt, logJson })
    .run();
}

/** What is kept under that key: the log's canonical JSON, and whose it is. */
export const readLogRow = (db: Db, key: string): { logJson: string; deviceId: string } | undefined =>
  db.orm
    .select({ logJson: classLog.logJson, deviceId: classLog.deviceId })
    .from(classLog)
    .where(eq(classLog.sessionId, key))
    .get();

/** How many logs a device has told since then (ms since the epoch). */
export function countLogsOf(db: Db, device: string, since: number): number {
  const told = and(eq(classLog.deviceId, device), gt(classLog.receivedAt, since));
  return db.orm.select({ n: count() }).from(classLog).where(told).get()?.n ?? 0;
}

/** A device's clock may be wrong: no class began after the studio was told of it. */
const latestFirst = [desc(sql`min(${classLog.startedAt}, ${classLog.receivedAt})`), desc(sql`rowid`)];

const { logJson, roomId, deviceId, receivedAt } = classLog;
const stored = { logJson, roomId, deviceId, receivedAt };
const toStored = ({ logJson: json, ...rest }: Omit<StoredLog, "log"> & { logJson: string }): StoredLog => ({
  ...rest,
  log: JSON.parse(json) as ClassLog, // checked when it was taken
});

/** The classes taught and rehearsed from one edition, the latest first. */
export function listClassLogs(db: Db, planId: string, number: number): StoredLog[] {
  const one = and(eq(classLog.planId, planId), eq(classLog.number, number));
  return db.orm
    .select(stored)
    .from(classLog)
    .where(one)
    .orderBy(...latestFirst)
    .all()
    .map(toStored);
}

/** The classes taught in one room, rehearsals not among them: the latest `most`, the latest first. */
export function listRoomClasses(db: Db, room: string, most: number): StoredLog[] {
  const taught = and(eq(classLog.roomId, room), eq(classLog.kind, "class"));
  const rows = db.orm
    .select(stored)
    .from(classLog)
    .where(taught)
    .orderBy(...latestFirst)
    .limit(most);
  return rows.all().map(toStored);
}

/** The rehearsals of one plan, of whichever edition: the latest `most`, the latest first. */
export function listRehearsals(db: Db, planId: string, most: number): StoredLog[] {
  const rehearsed = and(eq(classLog.planId, planId), eq(classLog.kind, "rehearsal"));
  const rows = db.orm
    .select(stored)
    .from(classLog)
    .where(rehearsed)
    .orderBy(...latestFirst)
    .limit(most);
  return rows.all().map(toStored);
}
