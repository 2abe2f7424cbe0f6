/** `npm run -s backup -- [FILE or FOLDER]`: one file that holds the studio, made while the server runs or stands. */
import { makeBackup } from "#server/backup/make-backup.ts";
import { readPlace } from "#server/env.ts";
import program from "../../package.json" with { type: "json" };
import { Refusal, runCommand } from "./run.ts";

await runCommand(async ([target, ...rest]) => {
  if (rest.length > 0 || target?.startsWith("-")) throw new Refusal("Name one file or folder: backup [FILE or FOLDER]");
  const made = await makeBackup({ place: readPlace(), target, program: program.version, at: new Date() });
  process.stdout.write(
    `${made.file}\nRead back and checked. It holds the server's secret: keep it where only you can read it.\n`,
  );
});
