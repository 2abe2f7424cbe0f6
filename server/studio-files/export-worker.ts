/** A thread that writes one export as a zip file, and ends. */
import { parentPort, workerData } from "node:worker_threads";
import { lowerPriority } from "#server/worker-threads/lower-priority.ts";
import { type ExportJob, runExportJob } from "./export-job.ts";

lowerPriority();
const { job } = workerData as { readonly job: ExportJob };
parentPort?.postMessage(await runExportJob(job));
