/** Makes backups and copies, each on a thread of its own: reading a whole database would keep everybody waiting. */
import { Worker } from "node:worker_threads";
import { threadFile } from "#server/worker-threads/thread-file.ts";
import type { BackupEnd, BackupJob } from "./backup-job.ts";
import type { CopyEnd, CopyJob } from "./copy-job.ts";

export interface JobThread<E> {
  /** Rejects when the thread breaks or is ended. */
  readonly end: Promise<E>;
  stop(): Promise<void>;
}
export type BackupThread = JobThread<BackupEnd>;

export const backupInThread = (job: BackupJob): BackupThread => jobInThread("backup", job);
export const copyInThread = (job: CopyJob): JobThread<CopyEnd> => jobInThread("copy", job);

function jobInThread<E>(kind: "backup" | "copy", job: BackupJob | CopyJob): JobThread<E> {
  const { file, source } = threadFile(`${kind}-worker`, `backup/${kind}-worker.ts`);
  const worker = new Worker(file, { workerData: { job, source }, execArgv: [] });
  worker.unref();
  const end = new Promise<E>((resolve, reject) => {
    worker.once("message", (said: E) => resolve(said));
    worker.once("error", reject);
    worker.once("exit", () => reject(new Error("the thread ended without an answer")));
  });
  return { end, stop: async () => void (await worker.terminate()) };
}
