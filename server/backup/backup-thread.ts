/** Makes backups and copies, each on a thread of its own. */
import { type JobThread, jobInThread } from "#server/worker-threads/job-thread.ts";
import type { BackupEnd, BackupJob } from "./backup-job.ts";
import type { CopyEnd, CopyJob } from "./copy-job.ts";

export type BackupThread = JobThread<BackupEnd>;

export const backupInThread = (job: BackupJob): BackupThread =>
  jobInThread("backup-worker", "backup/backup-worker.ts", job);
export const copyInThread = (job: CopyJob): JobThread<CopyEnd> =>
  jobInThread("copy-worker", "backup/copy-worker.ts", job);
