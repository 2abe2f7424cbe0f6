/** `npm run -s export -- FOLDER or FILE.zip`: the whole studio as open files, whether or not the server is running. */
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { readDataLocation } from "#server/base/env.ts";
import { type ExportSetup, exportStudio } from "#server/studio-files/export-studio.ts";
import type { StudioManifest } from "#server/studio-files/manifest.ts";
import { zipExport } from "#server/studio-files/zip.ts";
import program from "../../package.json" with { type: "json" };
import { CommandRefused, runCommand } from "./run.ts";

await runCommand(async ([target, ...rest]) => {
  if (target === undefined || rest.length > 0 || target.startsWith("-"))
    throw new CommandRefused("Name a new folder, or a new zip file: export FOLDER");
  const { databaseFile, origin, originGiven, givenSecret, secretFile } = readDataLocation();
  const kept = existsSync(secretFile) ? readFileSync(secretFile, "utf8").trim() : undefined;
  const setup = { databaseFile, origin, secret: givenSecret ?? kept, program: program.version, at: Date.now() };
  const manifest = target.endsWith(".zip") ? await zipped(setup, resolve(target)) : exportStudio(setup, target);
  process.stdout.write(`${resolve(target)}\n${said(manifest)}`);
  if (!originGiven)
    process.stdout.write(
      "Links in it begin with the usual address. Set SPRINGLINE_URL as the server has it for others.\n",
    );
});

async function zipped(setup: ExportSetup, file: string): Promise<StudioManifest> {
  if (existsSync(file))
    throw new CommandRefused(`${file} already exists. An export never overwrites a file: name another one.`);
  const work = mkdtempSync(join(dirname(file), ".export-"));
  try {
    const manifest = exportStudio(setup, join(work, "files"));
    await zipExport(join(work, "files"), manifest, file);
    return manifest;
  } finally {
    rmSync(work, { recursive: true, force: true });
  }
}

function said({ files, faults, leftOut }: StudioManifest): string {
  const bytes = files.reduce((sum, file) => sum + file.bytes, 0);
  return [
    `${files.length} files, ${(bytes / 1e6).toFixed(1)} MB. README.txt in it says what each is. They name people: keep them where only those may read who should.`,
    ...leftOut.map(({ path, why }) => `Not written as an open file, but in its tables: ${path}. ${why}`),
    ...faults.map((says) => `As the studio has it: ${says}`),
    "",
  ].join("\n");
}
