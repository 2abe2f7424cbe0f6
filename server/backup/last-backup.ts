/** When a backup was last made, by the server or by command. */
import { readdirSync } from "node:fs";
import type { Springline } from "#server/context/springline.ts";
import { keptBackupState } from "./backup-state.ts";
import { usualBackupFolder } from "./folder.ts";

/** "springline-2026-11-30T081500Z-v0.1.0.tar", as `makeBackup` names them. */
const NAME = /^springline-(\d{4}-\d{2}-\d{2})T(\d{2})(\d{2})(\d{2})Z-v.+\.tar$/;

/**
 * ms since the epoch: by the schedule, which tested it, or by the name of a file in the usual folder, which is given only to a
 * backup that was read back. Null where there is none.
 */
export function lastBackupAt({ db, env }: Pick<Springline, "db" | "env">): number | null {
  const scheduled = keptBackupState(db).last?.at;
  const times = namesIn(usualBackupFolder(env.dataDir)).flatMap((name) => {
    const [, day, hours, minutes, seconds] = NAME.exec(name) ?? [];
    const at = Date.parse(`${day}T${hours}:${minutes}:${seconds}Z`);
    return Number.isFinite(at) ? [at] : [];
  });
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
