/** Settings of the studio that one subject alone reads, by name, as JSON. */
import { eq } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { studioSettingTable } from "#db/review-schema.ts";

export type SettingName =
  | "rubric"
  | "mail"
  | "month"
  | "told-classes"
  | "backups"
  | "backup-state"
  | "first-steps"
  | "formats";

interface StoredSetting {
  /** Plain data, as its subject wrote it. */
  readonly data: unknown;
  /** ms since the epoch. */
  readonly updatedAt: number;
}

export function readSetting(db: Db, name: SettingName): StoredSetting | undefined {
  const row = db.orm.select().from(studioSettingTable).where(eq(studioSettingTable.name, name)).get();
  return row && { data: JSON.parse(row.dataJson) as unknown, updatedAt: row.updatedAt };
}

export function writeSetting(db: Db, name: SettingName, { data, updatedAt }: StoredSetting): void {
  const row = { name, dataJson: JSON.stringify(data), updatedAt };
  db.orm.insert(studioSettingTable).values(row).onConflictDoUpdate({ target: studioSettingTable.name, set: row }).run();
}

export function deleteSetting(db: Db, name: SettingName): void {
  db.orm.delete(studioSettingTable).where(eq(studioSettingTable.name, name)).run();
}
