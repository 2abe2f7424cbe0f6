/**
 * The thread of `checkpoints.ts`: brings the write-ahead log into the database, again and again. PASSIVE waits for nobody and
 * stops nobody; where nothing was written it touches nothing.
 */
import { parentPort, workerData } from "node:worker_threads";
import Database from "better-sqlite3";

const { file, everyMs } = workerData;
const raw = new Database(file, { fileMustExist: true });
// A thread of its own connection: its checkpoints bring to the disk what they move (synchronous is a matter of each).
raw.pragma("synchronous = FULL");

const timer = setInterval(() => {
  try {
    raw.pragma("wal_checkpoint(PASSIVE)");
  } catch (error) {
    parentPort?.postMessage({ failed: error instanceof Error ? error.message : String(error) });
  }
}, everyMs);

parentPort?.once("message", () => {
  clearInterval(timer);
  raw.close();
  parentPort?.close();
});
