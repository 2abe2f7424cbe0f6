/** The logs of classes, as sent by their devices. Written once. */
import { and, asc, count, desc, eq, gt, gte, inArray, lt, sql } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { classLogTable } from "#db/schema.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import { addSourceToRecord } from "./record-repo.ts";

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

/** Inside the caller's transaction. It stands in the chained record too. `key`: usually its session. `logJson`: canonical JSON of the log. */
export function insertClassLog(db: Db, { log, ...rest }: StoredLog, { key, logJson }: LogRow): void {
  const { kind, edition } = log;
  const { planId, number } = edition;
  const startedAt = Date.parse(log.startedAt);
  const kept = { ...rest, sessionId: key, planId, number, kind, startedAt, logJson };
  addSourceToRecord(db, "class log", db.orm.insert(classLogTable).values(kept).returning().get());
}

/** The log under that key, as canonical JSON, and the device that sent it. */
export const readLogRow = (db: Db, key: string): { logJson: string; deviceId: string } | undefined =>
  db.orm
    .select({ logJson: classLogTable.logJson, deviceId: classLogTable.deviceId })
    .from(classLogTable)
    .where(eq(classLogTable.sessionId, key))
    .get();

/** What the log under that key is about. */
export const readLogOf = (db: Db, key: string): { planId: string; kind: string } | undefined =>
  db.orm
    .select({ planId: classLogTable.planId, kind: classLogTable.kind })
    .from(classLogTable)
    .where(eq(classLogTable.sessionId, key))
    .get();

/** How many logs a device has sent since then (ms since the epoch). */
export function countLogsOf(db: Db, device: string, since: number): number {
  const told = and(eq(classLogTable.deviceId, device), gt(classLogTable.receivedAt, since));
  return db.orm.select({ n: count() }).from(classLogTable).where(told).get()?.n ?? 0;
}

/** A device's clock may be wrong: a class cannot have begun after its log was received. */
const latestFirst = [desc(sql`min(${classLogTable.startedAt}, ${classLogTable.receivedAt})`), desc(sql`rowid`)];

const { logJson, roomId, deviceId, receivedAt } = classLogTable;
const stored = { logJson, roomId, deviceId, receivedAt };
const toStored = ({ logJson: json, ...rest }: Omit<StoredLog, "log"> & { logJson: string }): StoredLog => ({
  ...rest,
  log: JSON.parse(json) as ClassLog, // checked when it was received
});

/** The classes and rehearsals of one edition, the newest first. */
export function listClassLogs(db: Db, planId: string, number: number): StoredLog[] {
  const one = and(eq(classLogTable.planId, planId), eq(classLogTable.number, number));
  return db.orm
    .select(stored)
    .from(classLogTable)
    .where(one)
    .orderBy(...latestFirst)
    .all()
    .map(toStored);
}

/** The classes of all editions of one plan, without rehearsals, the newest first. */
export function listClassesOfPlan(db: Db, planId: string): StoredLog[] {
  const taught = and(eq(classLogTable.planId, planId), eq(classLogTable.kind, "class"));
  const rows = db.orm
    .select(stored)
    .from(classLogTable)
    .where(taught)
    .orderBy(...latestFirst);
  return rows.all().map(toStored);
}

/** The classes that began in [from, to) (ms since the epoch), without rehearsals, the oldest first, each under its key. */
export function listClassesBetween(db: Db, from: number, to: number): (StoredLog & { readonly key: string })[] {
  const { startedAt, sessionId } = classLogTable;
  const taught = and(eq(classLogTable.kind, "class"), gte(startedAt, from), lt(startedAt, to));
  const rows = db.orm
    .select({ ...stored, key: sessionId })
    .from(classLogTable)
    .where(taught);
  return rows
    .orderBy(asc(startedAt), asc(sessionId))
    .all()
    .map(({ key, ...row }) => ({ key, ...toStored(row) }));
}

/** The newest `most` classes of one room, without rehearsals, the newest first. */
export function listRoomClasses(db: Db, room: string, most: number): StoredLog[] {
  const taught = and(eq(classLogTable.roomId, room), eq(classLogTable.kind, "class"));
  const rows = db.orm
    .select(stored)
    .from(classLogTable)
    .where(taught)
    .orderBy(...latestFirst)
    .limit(most);
  return rows.all().map(toStored);
}

/** The newest `most` rehearsals of one plan, of any edition, the newest first. */
export function listRehearsals(db: Db, planId: string, most: number): StoredLog[] {
  const rehearsed = and(eq(classLogTable.planId, planId), eq(classLogTable.kind, "rehearsal"));
  const rows = db.orm
    .select(stored)
    .from(classLogTable)
    .where(rehearsed)
    .orderBy(...latestFirst)
    .limit(most);
  return rows.all().map(toStored);
}

/** How many classes were taught from each edition of a plan, by its number, without rehearsals. */
export function countLogsByEdition(db: Db, planId: string): Map<number, number> {
  const taught = and(eq(classLogTable.planId, planId), eq(classLogTable.kind, "class"));
  const { number } = classLogTable;
  const rows = db.orm.select({ number, n: count() }).from(classLogTable).where(taught).groupBy(number).all();
  return new Map(rows.map((row) => [row.number, row.n]));
}

/** How many logs of this kind there are, of these plans or of all. */
export function countLogsOfKind(db: Db, kind: "class" | "rehearsal", planIds?: readonly string[]): number {
  const ofPlans = planIds === undefined ? undefined : inArray(classLogTable.planId, [...planIds]);
  const rows = db.orm.select({ n: count() }).from(classLogTable);
  return rows.where(and(eq(classLogTable.kind, kind), ofPlans)).get()?.n ?? 0;
}
