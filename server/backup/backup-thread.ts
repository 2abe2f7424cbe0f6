/** Makes a backup on a thread of its own: reading a whole database would keep everybody waiting. */
import { Worker } from "node:worker_threads";
import { threadFile } from "#server/worker-threads/thread-file.ts";
import type { BackupEnd, BackupJob } from "./backup-job.ts";

export interface BackupThread {
  /** Rejects when the thread breaks or is ended. */
  readonly end: Promise<BackupEnd>;
  stop(): Promise<void>;
}

export function backupInThread(job: BackupJob): BackupThread {
  const { file, source } = threadFile("backup-worker", "backup/backup-worker.ts");
  const worker = new Worker(file, { workerData: { job, source }, execArgv: [] });
  worker.unref();
  const end = new Promise<BackupEnd>((resolve, reject) => {
    worker.once("message", (said: BackupEnd) => resolve(said));
    worker.once("error", reject);
    worker.once("exit", () => reject(new Error("the thread ended without an answer")));
  });
  return { end, stop: async () => void (await worker.terminate()) };
}
