/** `npm run -s backup -- [FILE or FOLDER]`: backs the studio up into one file, whether or not the server is running. */
import { makeBackup } from "#server/backup/make-backup.ts";
import { readDataLocation } from "#server/base/env.ts";
import program from "../../package.json" with { type: "json" };
import { CommandRefused, runCommand } from "./run.ts";

await runCommand(async ([target, ...rest]) => {
  if (rest.length > 0 || target?.startsWith("-"))
    throw new CommandRefused("Name one file or folder: backup [FILE or FOLDER]");
  const made = await makeBackup({ place: readDataLocation(), target, program: program.version, at: new Date() });
  process.stdout.write(
    `${made.file}\nThe backup was read back and checked. It contains the server's secret: keep it where only you can read it.\n`,
  );
});
