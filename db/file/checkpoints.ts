/**
 * Checkpoints SQLite's write-ahead log on a thread of its own. SQLite would do it by itself, inside the commit that makes
 * the log a thousand pages long: with two hundred commits a second that is once a second, and everybody's typing would wait
 * about twenty milliseconds for the disk.
 */
import { existsSync } from "node:fs";
import { join } from "node:path";
import { Worker } from "node:worker_threads";
import type Database from "better-sqlite3";
import type { Damage } from "./damage.ts";

const EVERY_MS = 5000;
/** SQLite's own default. */
const USUAL_PAGES = 1000;
/** If the thread does not keep up, SQLite checkpoints inside a commit after all, at about 64 MB of log. */
const LAST_RESORT_PAGES = 16_000;

/** What is needed of the open database. */
export interface CheckpointedDatabase {
  readonly file: string;
  readonly raw: Database.Database;
  readonly damage: Damage;
}

export interface CheckpointSetup {
  readonly log: { warn(details: object, message: string): void };
  readonly everyMs?: number;
  /** The thread's program. Default: the one next to the server's bundle, or the source. */
  readonly program?: string;
}

export interface Checkpoints {
  /** Resolves once the thread has closed the database. */
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
      log.warn(details, "the write-ahead log could not be checkpointed on a thread; commits checkpoint it themselves");
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
  // A database known to be damaged is not written to any more.
  db.damage.onFound(() => void stop());
  return { stop };
}

/**
 * Moves the write-ahead log into the database and cuts it to nothing, so that what was deleted is not left in it. Waits for nobody:
 * false where somebody reads from it or writes at the moment.
 */
export function emptyLog(raw: Database.Database): boolean {
  const waits = Number(raw.pragma("busy_timeout", { simple: true }));
  raw.pragma("busy_timeout = 0");
  try {
    return raw.pragma("wal_checkpoint(TRUNCATE)", { simple: true }) === 0;
  } finally {
    raw.pragma(`busy_timeout = ${waits}`);
  }
}

function defaultProgram(): string {
  const built = join(import.meta.dirname, "checkpoint-worker.js");
  return existsSync(built) ? built : join(import.meta.dirname, "checkpoint-worker.mjs");
}
