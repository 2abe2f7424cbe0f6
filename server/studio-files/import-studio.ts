/**
 * Puts an exported studio into an empty one. Everything is read, filled and proved beside the data folder's own files; the
 * finished database gets its name in one step, so that whatever ends the command before leaves the studio empty.
 */
import { existsSync, renameSync, rmSync } from "node:fs";
import { mkdir, mkdtemp, open, readdir, rm, stat } from "node:fs/promises";
import { join, resolve } from "node:path";
import { openDatabase } from "#db/connection.ts";
import { standAlone } from "#db/file/copy.ts";
import { holdsStudio } from "#db/file/empty.ts";
import { acquireWriterLock } from "#db/file/writer-lock.ts";
import { chooseSecret, type DataLocation } from "#server/base/env.ts";
import { fillDatabase } from "./fill-database.ts";
import { type StudioManifest, shownFaults } from "./manifest.ts";
import { StudioFilesRefused } from "./refused.ts";
import { verifyFiles } from "./verify-files.ts";
import { unzipExport } from "./zip.ts";

export type ImportPlace = Pick<DataLocation, "dataDir" | "databaseFile" | "givenSecret">;

const WORK = ".import-";

export interface ImportChoice {
  /** Takes what the manifest says did not hold in the studio itself. */
  readonly withFaults: boolean;
}

/** `from`: an exported folder or zip file. Throws StudioFilesRefused, DatabaseInUse or EnvError; nothing is changed then. */
export async function importStudio(
  place: ImportPlace,
  from: string,
  choice: ImportChoice = { withFaults: false },
): Promise<StudioManifest> {
  const where = resolve(from);
  if (!existsSync(where)) throw new StudioFilesRefused(`There is no folder or file ${where}.`);
  await mkdir(place.dataDir, { recursive: true, mode: 0o700 });
  const lock = acquireWriterLock(place.databaseFile);
  try {
    refuseStudio(place);
    await removeLeftovers(place.dataDir);
    const work = await mkdtemp(join(place.dataDir, WORK));
    try {
      return await buildAndPut(place, { where, work, ...choice });
    } finally {
      await rm(work, { recursive: true, force: true });
    }
  } finally {
    lock.release();
  }
}

function refuseStudio({ databaseFile, dataDir }: ImportPlace): void {
  if (!existsSync(databaseFile) || !holdsStudio(databaseFile)) return;
  throw new StudioFilesRefused(
    `There is a studio in ${dataDir} already. An import never replaces one: set SPRINGLINE_DATA to an empty folder.`,
  );
}

/** Of an import that was killed. */
async function removeLeftovers(dataDir: string): Promise<void> {
  for (const name of await readdir(dataDir))
    if (name.startsWith(WORK)) await rm(join(dataDir, name), { recursive: true, force: true });
}

interface Import extends ImportChoice {
  readonly where: string;
  /** A new folder inside the data folder. */
  readonly work: string;
}

async function buildAndPut(place: ImportPlace, { where, work, withFaults }: Import): Promise<StudioManifest> {
  const folder = await folderOf(where, work);
  const manifest = await verifyFiles(folder, where);
  if (!withFaults) refuseFaults(manifest);
  const secret = chooseSecret(place.givenSecret, place.dataDir);
  const made = join(work, "springline.sqlite");
  const db = openDatabase(made);
  try {
    fillDatabase(db, { folder, manifest, secret });
  } finally {
    db.close();
  }
  standAlone(made);
  for (const end of ["-journal", "-wal", "-shm"]) rmSync(`${place.databaseFile}${end}`, { force: true });
  renameSync(made, place.databaseFile);
  const handle = await open(place.dataDir, "r");
  await handle.sync().finally(() => handle.close());
  return manifest;
}

/** Whoever forged rows could declare them as faults; so a person has to have read them. */
function refuseFaults(manifest: StudioManifest): void {
  const faults = shownFaults(manifest);
  if (faults.length === 0) return;
  throw new StudioFilesRefused(
    `This export says that something in it does not hold: ${faults.join(" ")} Nothing was imported. If you know why, add --with-faults.`,
  );
}

async function folderOf(where: string, work: string): Promise<string> {
  if ((await stat(where)).isDirectory()) return where;
  const folder = join(work, "files");
  await mkdir(folder, { mode: 0o700 });
  await unzipExport(where, folder);
  return folder;
}
