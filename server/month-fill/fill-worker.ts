/** A thread that fills one month, explains it slot by slot, and ends. */
import { parentPort, workerData } from "node:worker_threads";
import { explainFill } from "#lib/month/fill/explain.ts";
import type { ExplainedFill } from "#server/context/fills.ts";
import { fillAndProve } from "#server/month-fill/prove.ts";
import { lowerPriority } from "#server/worker-threads/lower-priority.ts";
import type { FillData } from "./fill-in-thread.ts";

lowerPriority();
const { month } = workerData as FillData;
const answer = await fillAndProve(month);
const found: ExplainedFill = { answer, explained: explainFill(month, answer) };
parentPort?.postMessage(found);
