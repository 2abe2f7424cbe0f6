/**
 * Replaces the studio by a backup. Everything is checked before anything is touched, and the old files are kept in a dated
 * folder. That includes the `-wal` file: one left by a crash belongs to the old database alone, and SQLite would read it
 * into any database of that name.
 */
import { existsSync } from "node:fs";
import { copyFile, link, mkdir, mkdtemp, open, readFile, rename, rm } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { databaseFault, factsDiffer, factsOf, forgetClientIds } from "#db/file/copy.ts";
import { acquireWriterLock } from "#db/file/writer-lock.ts";
import { removeWordIndex } from "#db/words/word-index.ts";
import { secretNameOf } from "#lib/backups/backup-name.ts";
import { DATABASE_ENTRY, type Manifest, readArchive, SECRET_ENTRY } from "./archive.ts";
import { BackupRefused } from "./backup-refused.ts";
import { type BackupSource, syncFolder } from "./make-backup.ts";

export interface Restored {
  /** Undefined for a plain database file, such as the copy made before an update. */
  readonly manifest: Manifest | undefined;
  /** The folder with the old files; undefined when there were none. */
  readonly kept: string | undefined;
}

/** Throws BackupRefused, DatabaseRefused or DatabaseInUse with one sentence; nothing is changed then. */
export async function restoreBackup(place: BackupSource, from: string, at: Date): Promise<Restored> {
  const file = resolve(from);
  if (!existsSync(file)) throw new BackupRefused(`There is no file ${file}.`);
  await mkdir(place.dataDir, { recursive: true, mode: 0o700 });
  const lock = acquireWriterLock(place.databaseFile);
  const work = await mkdtemp(join(place.dataDir, ".restore-"));
  try {
    const manifest = await unpack(file, work);
    const fault = faultIn(join(work, DATABASE_ENTRY), manifest);
    if (fault) throw new BackupRefused(`${file} cannot be restored: ${fault}. Nothing was changed.`);
    await refuseOtherSecret(place, work);
    // Pages hold changes made after the backup, each other's too: whichever page connects first may bring them.
    forgetClientIds(join(work, DATABASE_ENTRY));
    const kept = await keepWhatIsThere(place, at);
    await putIn(place, work);
    return { manifest, kept };
  } finally {
    await rm(work, { recursive: true, force: true });
    lock.release();
  }
}

function faultIn(database: string, manifest: Manifest | undefined): string | undefined {
  return databaseFault(database) ?? (manifest?.holds && factsDiffer(manifest.holds, factsOf(database)));
}

const SQLITE_HEAD = "SQLite format 3\0";

async function unpack(file: string, work: string): Promise<Manifest | undefined> {
  const handle = await open(file, "r");
  const head = await handle.read(Buffer.alloc(16), 0, 16, 0).finally(() => handle.close());
  if (head.buffer.toString("latin1") !== SQLITE_HEAD) return readArchive(file, work);
  if (existsSync(`${file}-wal`))
    throw new BackupRefused(
      `${file} is a database that is in use or was interrupted, not a backup. Name a file made by the backup command.`,
    );
  await copyFile(file, join(work, DATABASE_ENTRY));
  await takeSecretBeside(file, work);
  return undefined;
}

/** The copy folder holds the secret of its copies; other database files come without one. */
async function takeSecretBeside(file: string, work: string): Promise<void> {
  const name = secretNameOf(basename(file));
  const secret = name && join(dirname(file), name);
  if (secret && existsSync(secret)) await copyFile(secret, join(work, SECRET_ENTRY));
}

async function refuseOtherSecret({ givenSecret }: BackupSource, work: string): Promise<void> {
  const secret = await readFile(join(work, SECRET_ENTRY), "utf8").catch(() => undefined);
  if (secret === undefined || givenSecret === undefined || givenSecret.trim() === secret.trim()) return;
  throw new BackupRefused(
    "SPRINGLINE_SECRET is not the secret of this backup, so the server could not use its signing key. Nothing was changed. Unset SPRINGLINE_SECRET, or set it to the secret of that time.",
  );
}

/** Uses links, so that the old studio is complete in its folder before any of its names is removed. */
async function keepWhatIsThere(place: BackupSource, at: Date): Promise<string | undefined> {
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

const sqliteFiles = ({ databaseFile }: BackupSource): string[] =>
  ["", "-wal", "-shm", "-journal"].map((end) => `${databaseFile}${end}`);

async function putIn(place: BackupSource, work: string): Promise<void> {
  for (const name of sqliteFiles(place).slice(1)) await rm(name, { force: true });
  await syncFolder(place.dataDir);
  if (existsSync(join(work, SECRET_ENTRY))) await rename(join(work, SECRET_ENTRY), place.secretFile);
  // The words of the plans that were there; those of the backup are read again.
  removeWordIndex(place.databaseFile);
  await rename(join(work, DATABASE_ENTRY), place.databaseFile);
  await syncFolder(place.dataDir);
}
