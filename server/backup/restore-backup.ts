/**
 * Puts a backup in the place of what is there. Everything is checked before anything is touched; what was there is kept
 * whole in a dated folder beside it, its `-wal` with it: one left by a crash belongs to the old file alone, and SQLite
 * would read it into any database of that name.
 */
import { existsSync } from "node:fs";
import { copyFile, link, mkdir, mkdtemp, open, readFile, rename, rm } from "node:fs/promises";
import { join, resolve } from "node:path";
import { databaseFault, forgetClientIds } from "#db/file/copy.ts";
import { acquireWriterLock } from "#db/file/writer-lock.ts";
import type { DataLocation } from "#server/base/env.ts";
import { BackupRefused, DATABASE_ENTRY, type Manifest, readArchive, SECRET_ENTRY } from "./archive.ts";
import { syncFolder } from "./make-backup.ts";

export interface Restored {
  /** Undefined for a bare database file, such as the copy made before an update. */
  readonly manifest: Manifest | undefined;
  /** Where what was there is kept; undefined when nothing was. */
  readonly kept: string | undefined;
}

/** Throws BackupRefused, DatabaseRefused or DatabaseInUse, each with one sentence; nothing is changed then. */
export async function restoreBackup(place: DataLocation, from: string, at: Date): Promise<Restored> {
  const file = resolve(from);
  if (!existsSync(file)) throw new BackupRefused(`There is no file ${file}.`);
  await mkdir(place.dataDir, { recursive: true, mode: 0o700 });
  const lock = acquireWriterLock(place.databaseFile);
  const work = await mkdtemp(join(place.dataDir, ".restore-"));
  try {
    const manifest = await unpack(file, work);
    const fault = databaseFault(join(work, DATABASE_ENTRY));
    if (fault) throw new BackupRefused(`${file} cannot be restored: ${fault}. Nothing was changed.`);
    await refuseOtherSecret(place, work);
    // Pages hold words of later than the backup, of each other too: whoever comes first brings them.
    forgetClientIds(join(work, DATABASE_ENTRY));
    const kept = await keepWhatIsThere(place, at);
    await putIn(place, work);
    return { manifest, kept };
  } finally {
    await rm(work, { recursive: true, force: true });
    lock.release();
  }
}

const SQLITE_HEAD = "SQLite format 3\0";

async function unpack(file: string, work: string): Promise<Manifest | undefined> {
  const handle = await open(file, "r");
  const head = await handle.read(Buffer.alloc(16), 0, 16, 0).finally(() => handle.close());
  if (head.buffer.toString("latin1") !== SQLITE_HEAD) return readArchive(file, work);
  if (existsSync(`${file}-wal`))
    throw new BackupRefused(
      `${file} is a database in use or cut off, not a backup. Name a file made by the backup command.`,
    );
  await copyFile(file, join(work, DATABASE_ENTRY));
  return undefined;
}

async function refuseOtherSecret({ givenSecret }: DataLocation, work: string): Promise<void> {
  const secret = await readFile(join(work, SECRET_ENTRY), "utf8").catch(() => undefined);
  if (secret === undefined || givenSecret === undefined || givenSecret.trim() === secret.trim()) return;
  throw new BackupRefused(
    "SPRINGLINE_SECRET is not the secret of this backup, and the server could not open its signing key. Unset it, or set it to the one from then. Nothing was changed.",
  );
}

/** Links, so that the old studio is whole in its folder before any of its names goes. */
async function keepWhatIsThere(place: DataLocation, at: Date): Promise<string | undefined> {
  const there = [...sqliteFiles(place), place.secretFile].filter((name) => existsSync(name));
  if (there.length === 0) return undefined;
  const folder = await freshFolder(
    join(place.dataDir, `before-restore-${at.toISOString().slice(0, 19).replaceAll(":", "")}Z`),
  );
  for (const name of there) {
    const target = join(folder, name.slice(place.dataDir.length + 1));
    await link(name, target).catch(() => copyFile(name, target));
  }
  await syncFolder(folder);
  await syncFolder(place.dataDir);
  return folder;
}

async function freshFolder(name: string): Promise<string> {
  for (let n = 1; ; n++) {
    const folder = n === 1 ? name : `${name}-${n}`;
    if (existsSync(folder)) continue;
    await mkdir(folder, { mode: 0o700 });
    return folder;
  }
}

const sqliteFiles = ({ databaseFile }: DataLocation): string[] =>
  ["", "-wal", "-shm", "-journal"].map((end) => `${databaseFile}${end}`);

async function putIn(place: DataLocation, work: string): Promise<void> {
  for (const name of sqliteFiles(place).slice(1)) await rm(name, { force: true });
  await syncFolder(place.dataDir);
  if (existsSync(join(work, SECRET_ENTRY))) await rename(join(work, SECRET_ENTRY), place.secretFile);
  await rename(join(work, DATABASE_ENTRY), place.databaseFile);
  await syncFolder(place.dataDir);
}
