/**
 * The thread of `checkpoints.ts`: checkpoints the write-ahead log at intervals. PASSIVE neither waits for nor blocks other
 * connections, and does nothing when nothing was written.
 */
import { parentPort, workerData } from "node:worker_threads";
import Database from "better-sqlite3";

const { file, everyMs } = workerData;
const raw = new Database(file, { fileMustExist: true });
// The setting belongs to a connection: with it, this one's checkpoints sync what they move to the disk.
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
