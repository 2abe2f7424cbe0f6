/** One copy of the database into the copy folder. Runs on a thread of its own; never rejects. */
import { readdir, readFile, rename, rm, stat, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { copyDatabase } from "#db/file/copy.ts";
import { damageInFile } from "#db/file/soundness.ts";
import { copyAt, copySecretName, diskCopyName, nameMark } from "#lib/backups/backup-name.ts";
import type { KeptBackup } from "#server/context/care.ts";
import { backupProblem } from "./backup-problem.ts";
import { BackupRefused } from "./backup-refused.ts";
import { type BackupFolder, databaseBytes, readyFolder, refuseFull, removeLeftovers } from "./folder.ts";
import { type BackupSource, syncFolder } from "./make-backup.ts";

/** Plain data: it is sent to a thread. */
export interface CopyJob {
  readonly place: BackupSource;
  readonly folder: BackupFolder;
  /** The public id of this installation. */
  readonly installation: string;
  /** ms since the epoch. */
  readonly at: number;
}

export interface CopyEnd {
  readonly made: KeptBackup | null;
  readonly problem: string | null;
  /** Of the copying itself, without the start of its thread. */
  readonly tookMs: number;
}

/** The newest and the one before it, in case the newest is cut short by what ends the machine. */
const COPIES_KEPT = 2;

export async function runCopyJob(job: CopyJob): Promise<CopyEnd> {
  const from = performance.now();
  const took = () => Math.round(performance.now() - from);
  try {
    return { made: await copy(job), problem: null, tookMs: took() };
  } catch (error) {
    return { made: null, problem: backupProblem(error, job.folder.path), tookMs: took() };
  }
}

async function copy({ place, folder, installation, at }: CopyJob): Promise<KeptBackup> {
  const mark = nameMark(installation);
  const prefix = `.springline-copy-${mark}-`;
  await readyFolder(folder, place.dataDir);
  await removeLeftovers(folder.path, prefix);
  await refuseFull(folder.path, databaseBytes(place.databaseFile), "a copy");
  await keepSecret(join(folder.path, copySecretName(mark)), place.givenSecret ?? "");
  const unfinished = join(folder.path, `${prefix}unfinished`);
  await copyDatabase(place.databaseFile, unfinished);
  // A damaged database must not take the place of the last good copies.
  const damage = damageInFile(unfinished);
  if (damage !== undefined) {
    await rm(unfinished, { force: true });
    throw new BackupRefused(`The database is damaged (${damage.split("\n")[0]}); the copies before it are kept.`);
  }
  const name = diskCopyName(at, mark);
  await rename(unfinished, join(folder.path, name));
  await syncFolder(folder.path);
  await deleteOlder(folder.path, mark);
  return { name, at, bytes: (await stat(join(folder.path, name))).size };
}

/** Without it the copy's signing key could not be opened. */
async function keepSecret(file: string, secret: string): Promise<void> {
  if ((await readFile(file, "utf8").catch(() => undefined)) === secret) return;
  await writeFile(`${file}.new`, secret, { mode: 0o600, flush: true });
  await rename(`${file}.new`, file);
}

async function deleteOlder(folder: string, mark: string): Promise<void> {
  const copies = (await readdir(folder)).filter((name) => copyAt(name, mark) !== undefined).sort();
  for (const name of copies.slice(0, -COPIES_KEPT)) await rm(join(folder, name));
}
