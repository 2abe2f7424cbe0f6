/** Makes a backup, one file that holds the whole studio. The server may be running. It is read back before it is named. */
import { existsSync, statSync } from "node:fs";
import { link, mkdir, mkdtemp, open, readFile, rm } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";
import { copyDatabase, type DatabaseFacts, databaseFault } from "#db/file/copy.ts";
import { askForLook, damageOf } from "#db/file/soundness.ts";
import { commandedName } from "#lib/backups/backup-name.ts";
import type { DataLocation } from "#server/base/env.ts";
import { DATABASE_ENTRY, type Manifest, readArchive, writeArchive, writeSecret } from "./archive.ts";
import { BackupRefused } from "./backup-refused.ts";
import { usualBackupFolder } from "./folder.ts";

/** What a backup is made from. */
export type BackupSource = Pick<DataLocation, "dataDir" | "databaseFile" | "secretFile" | "givenSecret">;

export interface BackupSetup {
  readonly place: BackupSource;
  /** A new file, or a folder; undefined: `backups` beside the data folder. */
  readonly target: string | undefined;
  /** The program's version. */
  readonly program: string;
  readonly at: Date;
  /** The installation whose schedule makes it; left out where a person does. */
  readonly scheduledBy?: string;
  /** How the names of folders begin in which it is put together. */
  readonly workPrefix?: string;
}

export interface BackupMade {
  readonly file: string;
  readonly manifest: Manifest;
}

/** Throws BackupRefused or DatabaseRefused with one sentence, and leaves nothing half made behind. */
export async function makeBackup(setup: BackupSetup): Promise<BackupMade> {
  const file = nameFor(setup);
  if (existsSync(file))
    throw new BackupRefused(`${file} already exists. A backup never overwrites a file: name another one.`);
  const { databaseFile } = setup.place;
  if (!existsSync(databaseFile))
    throw new BackupRefused(
      `There is no database at ${databaseFile}. Set SPRINGLINE_DATA to the server's data folder.`,
    );
  const secret = await secretOf(setup.place);
  await mkdir(dirname(file), { recursive: true, mode: 0o700 });
  const work = await mkdtemp(join(dirname(file), setup.workPrefix ?? ".backup-"));
  try {
    const holds = await copyUndamaged(databaseFile, join(work, DATABASE_ENTRY));
    await writeSecret(work, secret);
    const archive = join(work, "archive.tar");
    const { program, at, scheduledBy } = setup;
    await writeArchive(work, archive, { program, at, holds, ...(scheduledBy === undefined ? {} : { scheduledBy }) });
    // So that there are never more than two of them on the disk.
    await rm(join(work, DATABASE_ENTRY));
    const back = await mkdtemp(join(work, "back-"));
    const manifest = await readArchive(archive, back);
    const fault = databaseFault(join(back, DATABASE_ENTRY));
    if (fault) throw refuseDamaged(databaseFile, fault);
    // A link fails if the file exists; a rename would replace it.
    await link(archive, file);
    await syncFolder(dirname(file));
    return { file, manifest };
  } finally {
    await rm(work, { recursive: true, force: true });
  }
}

async function copyUndamaged(databaseFile: string, target: string): Promise<DatabaseFacts> {
  try {
    return await copyDatabase(databaseFile, target);
  } catch (error) {
    const damage = damageOf(error);
    throw damage === undefined ? error : refuseDamaged(databaseFile, damage);
  }
}

/** A running server is asked to check as well: it may not have noticed the damage yet. */
function refuseDamaged(databaseFile: string, damage: string): BackupRefused {
  askForLook(databaseFile);
  return new BackupRefused(
    `The studio's database is damaged (${damage}); no backup was made. Stop the server and restore the latest backup: npm run -s restore -- FILE`,
  );
}

function nameFor({ place, target, program, at }: BackupSetup): string {
  const where = target === undefined ? usualBackupFolder(place.dataDir) : resolve(target);
  const isFolder =
    target === undefined || /[/\\]$/.test(target) || (existsSync(where) && statSync(where).isDirectory());
  return isFolder ? join(where, commandedName(at.getTime(), program)) : where;
}

async function secretOf({ givenSecret, secretFile }: BackupSource): Promise<string> {
  if (givenSecret !== undefined) return givenSecret;
  const kept = await readFile(secretFile, "utf8").catch(() => undefined);
  if (kept !== undefined) return kept;
  throw new BackupRefused(
    `There is no secret at ${secretFile}. Set SPRINGLINE_SECRET to the server's secret, or SPRINGLINE_DATA to its data folder.`,
  );
}

/** Makes new names in a folder survive a power cut. */
export async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, "r");
  await handle.sync().finally(() => handle.close());
}
