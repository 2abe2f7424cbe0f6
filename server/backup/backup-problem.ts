/** Why a backup could not be made, in words for the manager. */
import { DatabaseRefused } from "#db/file/migrations.ts";
import { BackupRefused } from "./backup-refused.ts";
import { notWritable } from "./folder.ts";

/** `folder`: where it was to be. */
export function backupProblem(error: unknown, folder: string): string {
  if (error instanceof BackupRefused || error instanceof DatabaseRefused) return error.message;
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  if (/ENOSPC|EDQUOT|SQLITE_FULL/.test(code))
    return `The disk of ${folder} is full. Free some space there, or name a folder on another disk.`;
  if (/EACCES|EPERM|EROFS|READONLY|CANTOPEN/.test(code)) return notWritable(folder);
  if (/ENOENT|ENOTDIR/.test(code))
    return `${folder} is not there and cannot be made. Is its disk mounted, and is there a folder above it?`;
  if (/EIO|ESTALE|ENOTCONN|EHOSTDOWN|ETIMEDOUT|SQLITE_IOERR/.test(code))
    return `The disk of ${folder} does not answer as it should (${code}). Check the disk or the network folder.`;
  if (/SQLITE_BUSY|SQLITE_LOCKED/.test(code)) return "The database was busy for too long. It is tried again.";
  return `Something went wrong (${code || (error instanceof Error ? error.name : "no reason given")}). The server's log says more.`;
}
