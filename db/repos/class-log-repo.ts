/** What classes did, as their devices told it: written once, read for ever. */
import { and, desc, eq } from "drizzle-orm";
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

/** `logJson`: canonical JSON of the log. */
export function insertClassLog(db: Db, { log, ...rest }: StoredLog, logJson: string): void {
  const { sessionId, kind, edition } = log;
  const { planId, number } = edition;
  const startedAt = Date.parse(log.startedAt);
  db.orm
    .insert(classLog)
    .values({ ...rest, sessionId, planId, number, kind, startedAt, logJson })
    .run();
}

/** The canonical JSON of the log of that session. */
export function readLogJson(db: Db, sessionId: string): string | undefined {
  return db.orm.select({ json: classLog.logJson }).from(classLog).where(eq(classLog.sessionId, sessionId)).get()?.json;
}

const { logJson, roomId, deviceId, receivedAt } = classLog;
const stored = { logJson, roomId, deviceId, receivedAt };
const toStored = ({ logJson: json, ...rest }: Omit<StoredLog, "log"> & { logJson: string }): StoredLog => ({
  ...rest,
  log: JSON.parse(json) as ClassLog, // checked when it was taken
});

/** The classes taught and rehearsed from one edition, the latest first. */
export function listClassLogs(db: Db, planId: string, number: number): StoredLog[] {
  const one = and(eq(classLog.planId, planId), eq(classLog.number, number));
  return db.orm.select(stored).from(classLog).where(one).orderBy(desc(classLog.startedAt)).all().map(toStored);
}

/** The classes taught in one room, rehearsals not among them: the latest `most`, the latest first. */
export function listRoomClasses(db: Db, room: string, most: number): StoredLog[] {
  const taught = and(eq(classLog.roomId, room), eq(classLog.kind, "class"));
  const rows = db.orm.select(stored).from(classLog).where(taught).orderBy(desc(classLog.startedAt)).limit(most);
  return rows.all().map(toStored);
}

/** The rehearsals of one plan, of whichever edition: the latest `most`, the latest first. */
export function listRehearsals(db: Db, planId: string, most: number): StoredLog[] {
  const rehearsed = and(eq(classLog.planId, planId), eq(classLog.kind, "rehearsal"));
  const rows = db.orm.select(stored).from(classLog).where(rehearsed).orderBy(desc(classLog.startedAt)).limit(most);
  return rows.all().map(toStored);
}
