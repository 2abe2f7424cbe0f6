/** Fills a month on a thread of its own: a proof takes seconds, in which the server must serve people. */
import { Worker } from "node:worker_threads";
import type { MonthFile } from "#lib/month/types.ts";
import type { ExplainedFill } from "#server/context/fills.ts";
import { threadFile } from "#server/worker-threads/thread-file.ts";

/** The data that a thread is started with. */
export interface FillData {
  readonly month: MonthFile;
}

/** Rejects with the error of the thread. `month` must be a valid month file. */
export function fillInThread(month: MonthFile): Promise<ExplainedFill> {
  return new Promise((resolve, reject) => {
    const { file, source } = threadFile("fill-worker", "month-fill/fill-worker.ts");
    const data: FillData = { month };
    const worker = new Worker(file, { workerData: { ...data, source }, execArgv: [] });
    worker.unref();
    worker.once("message", (found: ExplainedFill) => resolve(found));
    worker.once("error", reject);
    worker.once("exit", () => reject(new Error("The fill's thread ended without an answer")));
  });
}
