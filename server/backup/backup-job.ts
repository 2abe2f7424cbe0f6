/** One scheduled backup, from the empty disk to the deleted old ones. Runs on a thread of its own; never rejects. */
import { mkdtemp, readdir, rename, rm, stat } from "node:fs/promises";
import { join } from "node:path";
import { DatabaseRefused } from "#db/file/migrations.ts";
import { nameMark, scheduledAt, scheduledName } from "#lib/backups/backup-name.ts";
import { backupsToDelete, type KeepRule } from "#lib/backups/keep-rule.ts";
import type { KeptBackup } from "#server/context/care.ts";
import { readManifest } from "./archive.ts";
import { backupProblem } from "./backup-problem.ts";
import { BackupRefused } from "./backup-refused.ts";
import { type BackupFolder, databaseBytes, readyFolder, refuseFull, removeLeftovers, workPrefix } from "./folder.ts";
import { type BackupSource, makeBackup } from "./make-backup.ts";
import { testRestore } from "./test-restore.ts";

/** Plain data: it is sent to a thread. */
export interface BackupJob {
  readonly place: BackupSource;
  readonly folder: BackupFolder;
  /** The public id of this installation. */
  readonly installation: string;
  readonly keep: KeepRule;
  /** The studio's zone. */
  readonly zone: string;
  /** ms since the epoch. */
  readonly at: number;
  /** The program's version. */
  readonly program: string;
}

export interface BackupEnd {
  /** Null when none was made, or none that can be relied on. */
  readonly made: KeptBackup | null;
  /** The newest first; null where they could not be listed. */
  readonly kept: readonly KeptBackup[] | null;
  readonly problem: string | null;
}

export async function runBackupJob(job: BackupJob): Promise<BackupEnd> {
  try {
    const made = await makeAndTest(job);
    return { made, ...(await tidy(job, made)) };
  } catch (error) {
    return { made: null, kept: null, problem: backupProblem(error, job.folder.path) };
  }
}

async function makeAndTest(job: BackupJob): Promise<KeptBackup> {
  const { place, folder, installation, at, program } = job;
  const prefix = workPrefix(installation);
  await readyFolder(folder, place.dataDir);
  await removeLeftovers(folder.path, prefix);
  // The copy and its archive; then the archive and what is unpacked from it.
  await refuseFull(folder.path, 2 * databaseBytes(place.databaseFile), "a backup");
  const name = scheduledName(at, nameMark(installation));
  const { file } = await makeBackup({
    ...{ place, target: join(folder.path, name), program, at: new Date(at) },
    ...{ scheduledBy: installation, workPrefix: prefix },
  });
  await tested(file, await mkdtemp(join(folder.path, prefix)), at);
  return { name, at, bytes: (await stat(file)).size };
}

/** A backup that cannot be restored loses its name, so that nobody takes it for one that can. */
async function tested(file: string, work: string, at: number): Promise<void> {
  try {
    await testRestore(file, work, new Date(at));
  } catch (error) {
    if (!(error instanceof BackupRefused || error instanceof DatabaseRefused))
      throw new BackupRefused(`A backup was made but not restored for a test. ${backupProblem(error, work)}`);
    await rename(file, `${file}.failed`);
    throw new BackupRefused(`A backup did not pass its test and is kept as ${file}.failed. ${error.message}`);
  } finally {
    await rm(work, { recursive: true, force: true });
  }
}

/** Deletes what the rule does not keep. A disk on which that fails still has the new backup. */
async function tidy(job: BackupJob, made: KeptBackup): Promise<Omit<BackupEnd, "made">> {
  try {
    const own = await ownBackups(job.folder.path, job.installation);
    const out = new Set(backupsToDelete(own, job.keep, { zone: job.zone, now: job.at }));
    for (const { name } of out) await rm(join(job.folder.path, name));
    return { kept: own.filter((backup) => !out.has(backup)), problem: null };
  } catch (error) {
    const why = backupProblem(error, job.folder.path);
    return { kept: [made], problem: `A backup was made, but old ones could not be deleted. ${why}` };
  }
}

/** The schedule's own files, the newest first: both the name and the file itself have to say so. */
async function ownBackups(folder: string, installation: string): Promise<KeptBackup[]> {
  const own: KeptBackup[] = [];
  for (const name of await readdir(folder)) {
    const at = scheduledAt(name, nameMark(installation));
    if (at === undefined) continue;
    const file = join(folder, name);
    const manifest = await readManifest(file);
    const isOurs =
      manifest?.scheduledBy === installation && Math.floor(Date.parse(manifest.madeAt) / 1000) * 1000 === at;
    if (isOurs) own.push({ name, at, bytes: (await stat(file)).size });
  }
  return own.sort((a, b) => b.at - a.at);
}
