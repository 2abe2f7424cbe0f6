/** A thread that makes one backup, and ends. */
import { parentPort, workerData } from "node:worker_threads";
import { lowerPriority } from "#server/worker-threads/lower-priority.ts";
import { type BackupJob, runBackupJob } from "./backup-job.ts";

lowerPriority();
const { job } = workerData as { readonly job: BackupJob };
parentPort?.postMessage(await runBackupJob(job));
