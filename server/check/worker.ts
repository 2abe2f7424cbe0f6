/** A thread that checks plans, one at a time. It reads them from the database itself, or is sent what was read. */
import { parentPort, workerData } from "node:worker_threads";
import { openDatabase } from "#db/connection.ts";
import { createLog } from "#server/base/log.ts";
import { assess } from "#server/plans/assess-plan.ts";
import { lowerPriority } from "#server/worker-threads/lower-priority.ts";
import { CheckDesk } from "./check-desk.ts";
import type { ThreadOrder, ThreadReply, WorkerSetup } from "./messages.ts";

lowerPriority();

const { databaseFile } = workerData as WorkerSetup;
const desk = new CheckDesk(openDatabase(databaseFile, { readOnly: true }), createLog("warn"));

parentPort?.on("message", (order: ThreadOrder) => parentPort?.postMessage(replyTo(order)));

function replyTo({ kind, order }: ThreadOrder): ThreadReply {
  try {
    return { ok: true, answer: kind === "check" ? desk.check(order.planId, order.withFindings) : assess(order) };
  } catch (error) {
    return { ok: false, message: error instanceof Error ? error.message : String(error) };
  }
}
