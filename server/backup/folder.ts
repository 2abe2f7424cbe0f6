/** The folder that backups go into: is it there, can it be written, has its disk room, and is it the disk that it was? */
import { constants, existsSync, statSync } from "node:fs";
import { access, mkdir, readdir, rm, stat, statfs, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { nameMark } from "#lib/backups/backup-name.ts";
import { sizeWords } from "#lib/numbers/size-words.ts";
import { BackupRefused } from "./backup-refused.ts";

/** As it was set. */
export interface BackupFolder {
  readonly path: string;
  /** Made where it is missing: the usual folder only. Of another one, the disk may not be mounted. */
  readonly make: boolean;
  /** Whether it was on another disk than the data when it was set. */
  readonly apart: boolean;
}

/** Where backups go unless somebody names another folder. */
export const usualBackupFolder = (dataDir: string): string => join(dirname(dataDir), "backups");

/** Left free for everything else on the disk. Our own choice. */
const SPARE_BYTES = 64 * 1024 * 1024;

/** Throws BackupRefused unless files can be written into the folder and it is on the disk that it was on. */
export async function readyFolder({ path, make, apart }: BackupFolder, dataDir: string): Promise<void> {
  if (make) await makeFolder(path);
  const found = await stat(path).catch(() => undefined);
  if (!found) throw new BackupRefused(`There is no folder ${path}. Is its disk mounted? Mount it, or make the folder.`);
  if (!found.isDirectory()) throw new BackupRefused(`${path} is a file, not a folder. Name a folder.`);
  await access(path, constants.W_OK | constants.X_OK).catch(() => {
    throw new BackupRefused(notWritable(path));
  });
  if (apart && (await isOnDataDisk(path, dataDir)))
    throw new BackupRefused(
      `${path} was on another disk when it was set and is on the data's disk now: that disk is not mounted. Mount it, or save the backup settings again.`,
    );
}

/** One folder only: making those above it too never ends under /proc (Node 20). Leaves one that is there as it is. */
export async function makeFolder(path: string): Promise<void> {
  await mkdir(path, { mode: 0o700 }).catch((error: NodeJS.ErrnoException) => {
    if (error.code !== "EEXIST") throw error;
  });
}

export const notWritable = (path: string): string =>
  `The server's account may not write into ${path}. Give it the right to, or name another folder.`;

/** Writes and removes a file, since permissions alone do not tell: a disk may be mounted to be read only. */
export async function tryFolder(path: string): Promise<void> {
  const probe = join(path, `.springline-try-${process.pid}`);
  try {
    await writeFile(probe, "", { mode: 0o600, flush: true });
  } finally {
    await rm(probe, { force: true });
  }
}

export const isOnDataDisk = async (path: string, dataDir: string): Promise<boolean> =>
  (await stat(path)).dev === (await stat(dataDir)).dev;

/** Bytes of a database with its write-ahead log. */
export const databaseBytes = (file: string): number =>
  [file, `${file}-wal`].reduce((sum, name) => sum + (existsSync(name) ? statSync(name).size : 0), 0);

/** Throws BackupRefused unless the folder's disk has room for `bytes` and some more. `what`: "a backup". */
export async function refuseFull(path: string, bytes: number, what: string): Promise<void> {
  const { bavail, bsize } = await statfs(path);
  const needed = bytes + SPARE_BYTES;
  if (bavail * bsize >= needed) return;
  throw new BackupRefused(
    `There are ${sizeWords(bavail * bsize)} free on the disk of ${path}; ${what} needs ${sizeWords(needed)}. Free some space there, or name a folder on another disk.`,
  );
}

/** How the names of this installation's unfinished work begin. */
export const workPrefix = (installation: string): string => `.springline-${nameMark(installation)}-`;

/** Removes what a run left that was killed. There is never more than one at a time. */
export async function removeLeftovers(path: string, prefix: string): Promise<void> {
  for (const name of await readdir(path))
    if (name.startsWith(prefix)) await rm(join(path, name), { recursive: true, force: true });
}

/** A network folder that is gone does not answer at all. */
const ANSWER_MS = 5_000;

/** Throws BackupRefused when the folder keeps `work` waiting. */
export async function inTime<T>(work: Promise<T>, path: string): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(
      () => reject(new BackupRefused(`${path} does not answer. Check the disk or the network folder.`)),
      ANSWER_MS,
    );
  });
  return Promise.race([work, late]).finally(() => clearTimeout(timer));
}
