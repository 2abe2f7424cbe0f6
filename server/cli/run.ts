/** How the commands at the keyboard end: exit 0, or 1 with one line of what to do; never a stack trace. */
import { DatabaseRefused } from "#db/file/migrations.ts";
import { damageOf } from "#db/file/soundness.ts";
import { DatabaseInUse } from "#db/file/writer-lock.ts";
import { BackupRefused } from "#server/backup/archive.ts";
import { EnvError } from "#server/base/env.ts";
import { endQuietly } from "./end-quietly.ts";

/** Something to tell the person at the keyboard in one line. */
export class CommandRefused extends Error {}

const KNOWN = [CommandRefused, EnvError, BackupRefused, DatabaseRefused, DatabaseInUse];

export async function runCommand(command: (words: readonly string[]) => Promise<void> | void): Promise<void> {
  process.umask(0o077);
  endQuietly();
  try {
    await command(process.argv.slice(2));
  } catch (error) {
    process.exitCode = 1;
    process.stderr.write(`${sentence(error)}\n`);
  }
}

const DAMAGED =
  "The database is damaged, and nothing was changed. Stop the server and put the latest backup back: npm run -s restore -- FILE";

function sentence(error: unknown): string {
  if (!(error instanceof Error)) return `This went wrong: ${String(error)}`;
  if (KNOWN.some((kind) => error instanceof kind)) return error.message;
  const code = "code" in error ? String(error.code) : "";
  if (damageOf(error) !== undefined) return DAMAGED;
  if (/ENOSPC|SQLITE_FULL/.test(code)) return "The disk is full: nothing was changed. Make room and try again.";
  if (/EACCES|EPERM|EROFS|READONLY/.test(code))
    return `This account may not write or read there (${error.message}). Run the command as the account of the server.`;
  return `This went wrong: ${error.message}`;
}
