/**
 * Syncs the write-ahead log to the disk, off the thread that serves people. A commit of the document log survives a kill as
 * soon as it returns; after this it survives a power cut too.
 */
import { closeSync, fdatasync, fsync, open } from "node:fs";
import { dirname } from "node:path";
import { promisify } from "node:util";

const openFile = promisify(open);
const dataSync = promisify(fdatasync);
const wholeSync = promisify(fsync);

/** What is needed of the open database. */
export interface LoggedDatabase {
  readonly file: string;
  onClose(act: () => void): void;
}

/** The open log file per database: SQLite creates it with the first commit and keeps it until the database closes. */
const logs = new WeakMap<LoggedDatabase, Promise<number>>();

/** Resolves when everything committed before the call is on the disk. Rejects when the sync fails. */
export async function syncLog(db: LoggedDatabase): Promise<void> {
  const log = logs.get(db) ?? openLog(db);
  logs.set(db, log);
  try {
    // fdatasync, as SQLite uses: content and length of the file, not its times.
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
  // The file's entry in its folder has to be synced once.
  const folder = await openFile(dirname(db.file), "r");
  try {
    await wholeSync(folder);
  } finally {
    closeSync(folder);
  }
  return file;
}
