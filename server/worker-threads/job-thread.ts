/** One job on a thread of its own, which answers once and ends: reading a whole database would keep everybody waiting. */
import { Worker } from "node:worker_threads";
import { threadFile } from "./thread-file.ts";

export interface JobThread<E> {
  /** Rejects when the thread breaks or is ended. */
  readonly end: Promise<E>;
  stop(): Promise<void>;
}

/** `name` is the built file (`server/build.mjs`), `source` its source from `server/`. `job` is plain data. */
export function jobInThread<E>(name: string, source: string, job: unknown): JobThread<E> {
  const program = threadFile(name, source);
  const worker = new Worker(program.file, { workerData: { job, source: program.source }, execArgv: [] });
  worker.unref();
  const end = new Promise<E>((resolve, reject) => {
    worker.once("message", (said: E) => resolve(said));
    worker.once("error", reject);
    worker.once("exit", () => reject(new Error("the thread ended without an answer")));
  });
  return { end, stop: async () => void (await worker.terminate()) };
}
