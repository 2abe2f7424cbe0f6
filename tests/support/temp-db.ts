/** A database of the test's own, in a folder that is removed after the test. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Db, type OpenOptions, openDatabase } from "#db/connection.ts";

export interface TempDb {
  readonly file: string;
  readonly folder: string;
  open(options?: OpenOptions): Db;
  /** Closes the database and removes the folder. */
  remove(): void;
}

export function tempDb(): TempDb {
  const folder = mkdtempSync(join(tmpdir(), "springline-test-"));
  const file = join(folder, "test.sqlite");
  const opened: Db[] = [];
  return {
    file,
    folder,
    open(options) {
      const db = openDatabase(file, options);
      opened.push(db);
      return db;
    },
    remove() {
      for (const db of opened) if (db.raw.open) db.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
