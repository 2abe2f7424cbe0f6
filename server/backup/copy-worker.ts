/** A thread that makes one copy, and ends. */
import { parentPort, workerData } from "node:worker_threads";
import { lowerPriority } from "#server/worker-threads/lower-priority.ts";
import { type CopyJob, runCopyJob } from "./copy-job.ts";

lowerPriority();
const { job } = workerData as { readonly job: CopyJob };
parentPort?.postMessage(await runCopyJob(job));
