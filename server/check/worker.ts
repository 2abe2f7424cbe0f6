/** A thread that checks plans: reads them from the database by itself, one order at a time, and answers. */
import { readlinkSync } from "node:fs";
import { setPriority } from "node:os";
import { basename } from "node:path";
import { parentPort, workerData } from "node:worker_threads";
import { openDatabase } from "#db/connection.ts";
import { createLog } from "#server/log.ts";
import { CheckDesk } from "./check-desk.ts";
import type { CheckOrder, CheckReply, WorkerSetup } from "./messages.ts";

/** Niceness: on a busy machine letters go first. */
const BEHIND_LETTERS = 10;
stepBehind();

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

/** This thread alone. Linux names it by a link; elsewhere it stays as it is, and checks take their share. */
function stepBehind(): void {
  try {
    setPriority(Number(basename(readlinkSync("/proc/thread-self"))), BEHIND_LETTERS);
  } catch {
    // Nothing is wrong: only a kindness is not to be had.
  }
}
