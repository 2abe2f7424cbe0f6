/** What is known of the backups over a restart: kept in the database, read by the server and the doctor. */
import { readSetting, writeSetting } from "#db/repos/setting-repo.ts";
import type { BackupState } from "#server/context/care.ts";
import type { Springline } from "#server/context/springline.ts";

export type KeptBackupState = Pick<BackupState, "last" | "problem" | "kept">;
const NOTHING: KeptBackupState = { last: null, problem: null, kept: [] };

export const keptBackupState = (db: Springline["db"]): KeptBackupState =>
  (readSetting(db, "backup-state")?.data as KeptBackupState | undefined) ?? NOTHING; // written below only

export const keepBackupState = ({ db, now }: Pick<Springline, "db" | "now">, state: KeptBackupState): void =>
  writeSetting(db, "backup-state", { data: state, updatedAt: now() });
