/** A thread that fills one month, and ends. */
import { parentPort, workerData } from "node:worker_threads";
import { fillAndProve } from "#server/month-fill/prove.ts";
import { lowerPriority } from "#server/worker-threads/lower-priority.ts";
import type { FillData } from "./fill-in-thread.ts";

lowerPriority();
const { month } = workerData as FillData;
parentPort?.postMessage(await fillAndProve(month));
