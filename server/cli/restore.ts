/** `npm run -s restore -- FILE`: restores a backup, with the server stopped. */
import { restoreBackup } from "#server/backup/restore-backup.ts";
import { readDataLocation } from "#server/base/env.ts";
import { CommandRefused, runCommand } from "./run.ts";

await runCommand(async ([file, ...rest]) => {
  if (file === undefined || file.startsWith("-") || rest.length > 0)
    throw new CommandRefused("Name one backup: restore FILE");
  const { manifest, kept } = await restoreBackup(readDataLocation(), file, new Date());
  const what = manifest ? `the backup of ${manifest.madeAt} (version ${manifest.program})` : "the database";
  process.stdout.write(`Restored ${what}. Start the server.\n`);
  if (kept) process.stdout.write(`The old files are kept in ${kept}\n`);
});
