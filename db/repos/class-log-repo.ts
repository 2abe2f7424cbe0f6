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

/** The classes taught from one edition, the latest first. */
export function listClassLogs(db: Db, planId: string, number: number): StoredLog[] {
  const one = and(eq(classLog.planId, planId), eq(classLog.number, number));
  const { logJson, roomId, deviceId, receivedAt } = classLog;
  const rows = db.orm.select({ logJson, roomId, deviceId, receivedAt }).from(classLog).where(one);
  return rows
    .orderBy(desc(classLog.startedAt))
    .all()
    .map(({ logJson: json, ...rest }) => ({ ...rest, log: JSON.parse(json) as ClassLog })); // checked when it was taken
}
