/**
 * Brings SQLite's write-ahead log into the database on a thread of its own. SQLite does it by itself too, inside whichever
 * commit makes the log a thousand pages long: with two hundred commits a second that is once a second, and everybody's letters
 * wait some twenty milliseconds for the disk.
 */
import { existsSync } from "node:fs";
import { join } from "node:path";
import { Worker } from "node:worker_threads";
import type Database from "better-sqlite3";
import type { Damage } from "./damage.ts";

const EVERY_MS = 5000;
/** SQLite's own default. */
const USUAL_PAGES = 1000;
/** Where SQLite does it inside a commit all the same: some 64 MB of log, should the thread not keep up. */
const LAST_RESORT_PAGES = 16_000;

/** The open database whose log is brought in. */
export interface CheckpointedDatabase {
  readonly file: string;
  readonly raw: Database.Database;
  readonly damage: Damage;
}

export interface CheckpointSetup {
  readonly log: { warn(details: object, message: string): void };
  readonly everyMs?: number;
  /** The thread's program; beside the bundle that the server runs as, else the source. */
  readonly program?: string;
}

export interface Checkpoints {
  /** Resolves once the thread has let go of the database. */
  stop(): Promise<void>;
}

export function checkpointBeside(
  db: CheckpointedDatabase,
  { log, everyMs = EVERY_MS, program = defaultProgram() }: CheckpointSetup,
): Checkpoints {
  const worker = new Worker(program, { workerData: { file: db.file, everyMs }, execArgv: [] });
  worker.unref();
  db.raw.pragma(`wal_autocheckpoint = ${LAST_RESORT_PAGES}`);
  let warned = false;
  const warn = (details: object) => {
    if (!warned)
      log.warn(details, "the write-ahead log could not be folded beside the server: commits fold it themselves");
    warned = true;
  };
  const ended = new Promise<void>((resolve) => worker.once("exit", () => resolve()));
  worker.on("message", warn);
  worker.on("error", (err) => warn({ err }));
  worker.once("exit", () => {
    if (db.raw.open) db.raw.pragma(`wal_autocheckpoint = ${USUAL_PAGES}`);
  });
  const stop = async () => {
    worker.postMessage("stop");
    await ended;
  };
  // What is known to be damaged is written to no more, from here neither.
  db.damage.onFound(() => void stop());
  return { stop };
}

function defaultProgram(): string {
  const built = join(import.meta.dirname, "checkpoint-worker.js");
  return existsSync(built) ? built : join(import.meta.dirname, "checkpoint-worker.mjs");
}
