/** Folds the logs of large documents, each on a new thread: it is rare enough that starting one does not matter. */
import { Worker } from "node:worker_threads";
import type { Fold, FoldPoint } from "#server/doc-log/stored-doc.ts";
import { threadFile } from "#server/worker-threads/thread-file.ts";

/** The data that a thread is started with. */
export interface FoldData {
  readonly databaseFile: string;
  readonly mark: FoldPoint;
}

/** Rejects with the error of the thread, such as a log that differs from its live copy. */
export function foldInThread(databaseFile: string): Fold {
  return (mark) =>
    new Promise((resolve, reject) => {
      const { file, source } = threadFile("fold-worker", "doc-log/fold-worker.ts");
      const data: FoldData = { databaseFile, mark };
      const worker = new Worker(file, { workerData: { ...data, source }, execArgv: [] });
      worker.unref();
      worker.once("message", (bytes: Uint8Array) => resolve(bytes));
      worker.once("error", reject);
      worker.once("exit", () => resolve(undefined));
    });
}
