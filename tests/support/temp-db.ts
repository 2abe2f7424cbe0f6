/** A database of the test's own, in a folder that is removed after the test. */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
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

/** `holds`: an answer of `databaseWith`. Left out: an empty database of the newest form. */
export function tempDb(holds?: Uint8Array): TempDb {
  const folder = mkdtempSync(join(tmpdir(), "springline-test-"));
  const file = join(folder, "test.sqlite");
  const opened: Db[] = [];
  return {
    file,
    folder,
    open(options = {}) {
      const isNew = !(options.readOnly || options.beside || options.migrationsFolder) && !existsSync(file);
      if (isNew) writeFileSync(file, holds ?? newest());
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

/**
 * The file of a migrated database after `fill`, to begin other databases with: making all tables and rows for each test anew
 * takes half of what opening a studio costs.
 */
export function databaseWith(fill: (db: Db) => void): Uint8Array {
  const folder = mkdtempSync(join(tmpdir(), "springline-test-"));
  const file = join(folder, "made.sqlite");
  const db = openDatabase(file, { synchronous: "NORMAL" });
  try {
    fill(db);
  } finally {
    db.close();
  }
  const bytes = readFileSync(file);
  rmSync(folder, { recursive: true });
  return bytes;
}

let empty: Uint8Array | undefined;
function newest(): Uint8Array {
  empty ??= databaseWith(() => undefined);
  return empty;
}
