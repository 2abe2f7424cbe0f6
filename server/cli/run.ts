/** Runs a command: exit 0, or 1 with one line that says what to do; never a stack trace. */
import { DatabaseRefused } from "#db/file/migrations.ts";
import { damageOf } from "#db/file/soundness.ts";
import { DatabaseInUse } from "#db/file/writer-lock.ts";
import { BackupRefused } from "#server/backup/backup-refused.ts";
import { EnvError } from "#server/base/env.ts";
import { HostRefused } from "#server/host/host-refused.ts";
import { StudioFilesRefused } from "#server/studio-files/refused.ts";
import { endQuietly } from "./end-quietly.ts";

/** The command cannot be carried out; the message is one line for the person who called it. */
export class CommandRefused extends Error {}

const KNOWN = [
  ...[CommandRefused, EnvError, BackupRefused, StudioFilesRefused, HostRefused],
  ...[DatabaseRefused, DatabaseInUse],
];

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
  "The database is damaged. Nothing was changed. Stop the server and restore the latest backup: npm run -s restore -- FILE";

function sentence(error: unknown): string {
  if (!(error instanceof Error)) return `Something went wrong: ${String(error)}`;
  if (KNOWN.some((kind) => error instanceof kind)) return error.message;
  const code = "code" in error ? String(error.code) : "";
  if (damageOf(error) !== undefined) return DAMAGED;
  if (/ENOSPC|SQLITE_FULL/.test(code)) return "The disk is full. Nothing was changed. Free some space and try again.";
  if (/EACCES|EPERM|EROFS|READONLY/.test(code))
    return `This account may not read or write there (${error.message}). Run the command under the server's account.`;
  return `Something went wrong: ${error.message}`;
}
