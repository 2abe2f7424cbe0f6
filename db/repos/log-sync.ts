/**
 * Brings the write-ahead log to the disk itself, off the thread that serves people. A commit of the document log is
 * safe from a kill as soon as it returns; after this it is safe from a power cut too.
 */
import { type FileHandle, open } from "node:fs/promises";
import { dirname } from "node:path";
import type { Db } from "#db/connection.ts";

const folderSynced = new WeakSet<Db>();

/**
 * Resolves when everything committed before the call is on the disk. Rejects when the disk refuses. A missing log means
 * that SQLite has just folded it into the database, which it brings to the disk itself.
 */
export async function syncLog(db: Db): Promise<void> {
  await synced(`${db.file}-wal`);
  if (folderSynced.has(db)) return;
  // The log's own entry in its folder: once, since the file stays while the database is open.
  await synced(dirname(db.file));
  folderSynced.add(db);
}

async function synced(path: string): Promise<void> {
  let handle: FileHandle | undefined;
  try {
    handle = await open(path, "r");
    await handle.sync();
  } catch (error) {
    if (!(error instanceof Error && "code" in error && error.code === "ENOENT")) throw error;
  } finally {
    await handle?.close();
  }
}
