/**
 * Brings the write-ahead log to the disk itself, off the thread that serves people. A commit of the document log is
 * safe from a kill as soon as it returns; after this it is safe from a power cut too.
 */
import { closeSync, fdatasync, fsync, open } from "node:fs";
import { dirname } from "node:path";
import { promisify } from "node:util";

const openFile = promisify(open);
const dataSync = promisify(fdatasync);
const wholeSync = promisify(fsync);

/** An open database, as far as its log is concerned. */
export interface LoggedDatabase {
  readonly file: string;
  onClose(act: () => void): void;
}

/** The log of an open database: SQLite makes it with the first commit and keeps the file until it closes. */
const logs = new WeakMap<LoggedDatabase, Promise<number>>();

/** Resolves when everything committed before the call is on the disk. Rejects when the disk refuses. */
export async function syncLog(db: LoggedDatabase): Promise<void> {
  const log = logs.get(db) ?? openLog(db);
  logs.set(db, log);
  try {
    // As SQLite does it: what is in the file and how long it is, not when it was last written.
    await dataSync(await log);
  } catch (error) {
    logs.delete(db);
    throw error;
  }
}

async function openLog(db: LoggedDatabase): Promise<number> {
  const file = await openFile(`${db.file}-wal`, "r");
  let isOpen = true;
  db.onClose(() => {
    logs.delete(db);
    if (isOpen) closeSync(file);
    isOpen = false;
  });
  // Its own entry in its folder: once.
  const folder = await openFile(dirname(db.file), "r");
  try {
    await wholeSync(folder);
  } finally {
    closeSync(folder);
  }
  return file;
}
