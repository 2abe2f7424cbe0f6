/** A thread that checks plans, one at a time. It reads them from the database itself. */
import { parentPort, workerData } from "node:worker_threads";
import { openDatabase } from "#db/connection.ts";
import { createLog } from "#server/base/log.ts";
import { lowerPriority } from "#server/worker-threads/lower-priority.ts";
import { CheckDesk } from "./check-desk.ts";
import type { CheckOrder, CheckReply, WorkerSetup } from "./messages.ts";

lowerPriority();

const { databaseFile } = workerData as WorkerSetup;
const desk = new CheckDesk(openDatabase(databaseFile, { readOnly: true }), createLog("warn"));

parentPort?.on("message", (order: CheckOrder) => parentPort?.postMessage(replyTo(order)));

function replyTo({ planId, withFindings }: CheckOrder): CheckReply {
  try {
    return { ok: true, answer: desk.check(planId, withFindings) };
  } catch (error) {
    return { ok: false, message: error instanceof Error ? error.message : String(error) };
  }
}
