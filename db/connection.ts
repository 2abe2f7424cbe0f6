/**
 * The one SQLite database of an installation: opened once by the composition root, never at import. Opening takes the
 * writer lock, refuses a file of a newer program, and brings the tables up to date.
 */
import { existsSync, mkdirSync } from "node:fs";
import { dirname, join } from "node:path";
import Database from "better-sqlite3";
import { type BetterSQLite3Database, drizzle } from "drizzle-orm/better-sqlite3";
import { migrate } from "drizzle-orm/better-sqlite3/migrator";
import { readMigrationFiles } from "drizzle-orm/migrator";
import { acquireWriterLock, type WriterLock } from "./repos/lock-repo.ts";
import * as schema from "./schema.ts";

export interface Db {
  readonly orm: BetterSQLite3Database<typeof schema>;
  readonly raw: Database.Database;
  readonly file: string;
  close(): void;
}

export interface OpenOptions {
  /** Reads only: takes no lock, runs no migration. */
  readonly readOnly?: boolean;
  /** FULL (the default) survives a power cut; NORMAL may then lose the last commits, though never the file. */
  readonly synchronous?: "FULL" | "NORMAL";
  readonly migrationsFolder?: string;
}

/** The file cannot be used by this program; the message says what to do and is fit to be shown. */
export class DatabaseRefused extends Error {
  override readonly name = "DatabaseRefused";
}

/**
 * Opens and migrates `file`, making its folder when needed. Throws DatabaseRefused for a file of a newer program, a
 * missing or out-of-date file opened read-only, or a migration that breaks a reference; DatabaseInUse when another
 * process writes to it.
 */
export function openDatabase(file: string, options: OpenOptions = {}): Db {
  const readOnly = options.readOnly === true;
  if (readOnly && !existsSync(file)) throw new DatabaseRefused(`There is no database at ${file}.`);
  if (!readOnly) mkdirSync(dirname(file), { recursive: true });
  const lock = readOnly ? undefined : acquireWriterLock(file);
  try {
    const raw = new Database(file, { readonly: readOnly });
    try {
      return prepare(raw, file, options, lock);
    } catch (error) {
      raw.close();
      throw error;
    }
  } catch (error) {
    lock?.release();
    throw error;
  }
}

function prepare(raw: Database.Database, file: string, options: OpenOptions, lock: WriterLock | undefined): Db {
  const folder = options.migrationsFolder ?? defaultMigrations();
  refuseNewer(raw, file, folder);
  const orm = drizzle(raw, { schema });
  if (options.readOnly === true) refuseOlder(raw, file, folder);
  else {
    raw.pragma("journal_mode = WAL");
    raw.pragma(`synchronous = ${options.synchronous ?? "FULL"}`);
    // Waiting stops the whole process; nobody but a backup ever competes, and a failed commit is tried again anyway.
    raw.pragma("busy_timeout = 1000");
    runMigrations(raw, orm, folder);
  }
  raw.pragma("foreign_keys = ON");
  return {
    orm,
    raw,
    file,
    close() {
      raw.close();
      lock?.release();
    },
  };
}

/**
 * Drizzle migrates inside a transaction, where `PRAGMA foreign_keys` does nothing, so a rebuilt table would take its
 * child rows with it: keys are switched off around the whole run and every reference is checked before they count again.
 */
function runMigrations(raw: Database.Database, orm: BetterSQLite3Database<typeof schema>, folder: string): void {
  raw.pragma("foreign_keys = OFF");
  migrate(orm, { migrationsFolder: folder });
  const broken = raw.pragma("foreign_key_check") as unknown[];
  if (broken.length > 0)
    throw new DatabaseRefused(`Updating the database left ${broken.length} broken references. Restore the backup.`);
}

/** When each known migration was made, which is how drizzle tells them apart in the database. */
const knownMigrations = (folder: string): number[] =>
  readMigrationFiles({ migrationsFolder: folder }).map((m) => m.folderMillis);

function appliedMigrations(raw: Database.Database): number[] {
  const table = raw.prepare("select 1 from sqlite_master where type = 'table' and name = '__drizzle_migrations'").get();
  if (!table) return [];
  return raw.prepare<[], number>("select created_at from __drizzle_migrations").pluck().all().map(Number);
}

function refuseNewer(raw: Database.Database, file: string, folder: string): void {
  const known = new Set(knownMigrations(folder));
  if (appliedMigrations(raw).every((at) => known.has(at))) return;
  throw new DatabaseRefused(
    `The database ${file} was written by a newer version of the program. Update the program; nothing was changed.`,
  );
}

function refuseOlder(raw: Database.Database, file: string, folder: string): void {
  const applied = new Set(appliedMigrations(raw));
  if (knownMigrations(folder).every((at) => applied.has(at))) return;
  throw new DatabaseRefused(`The database ${file} is of an older version. Start the program once to update it.`);
}

/** Beside this file in the sources; under the working folder when the server runs as one bundled file. */
function defaultMigrations(): string {
  const beside = join(import.meta.dirname, "migrations");
  return existsSync(beside) ? beside : join(process.cwd(), "db", "migrations");
}

/** Copies a database in use to `target` page by page, consistent and without stopping anybody. */
export async function backupDatabase(db: Db, target: string): Promise<void> {
  mkdirSync(dirname(target), { recursive: true });
  await db.raw.backup(target);
}
