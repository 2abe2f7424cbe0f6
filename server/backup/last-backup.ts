/** When a backup was last made, by the server or by command. */
import { readdirSync } from "node:fs";
import { commandedAt } from "#lib/backups/backup-name.ts";
import type { Springline } from "#server/context/springline.ts";
import { keptBackupState } from "./backup-state.ts";
import { usualBackupFolder } from "./folder.ts";

/**
 * ms since the epoch: by the schedule, which tested it, or by the name of a file in the usual folder, which is given only to a
 * backup that was read back. Null where there is none.
 */
export function lastBackupAt({ db, env }: Pick<Springline, "db" | "env">): number | null {
  const scheduled = keptBackupState(db).last?.at;
  const times = namesIn(usualBackupFolder(env.dataDir)).flatMap((name) => commandedAt(name) ?? []);
  const all = scheduled === undefined ? times : [...times, scheduled];
  return all.length === 0 ? null : Math.max(...all);
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return []; // no backup has gone there yet, or it cannot be looked into
  }
}
