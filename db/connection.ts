/**
 * The SQLite database of an installation: opened once by the composition root, never at import. Opening takes the writer
 * lock, refuses a damaged file or one of a newer program, and migrates the tables.
 */
import { chmodSync, existsSync, mkdirSync } from "node:fs";
import { dirname } from "node:path";
import Database from "better-sqlite3";
import { type BetterSQLite3Database, drizzle } from "drizzle-orm/better-sqlite3";
import { type Damage, watchDamage } from "./file/damage.ts";
import { DatabaseRefused, defaultMigrations, refuseNewer, refuseOlder, runMigrations } from "./file/migrations.ts";
import { damageIn } from "./file/soundness.ts";
import { acquireWriterLock, refuseFenced, type WriterLock } from "./file/writer-lock.ts";
import * as schema from "./schema.ts";

export interface Db {
  readonly orm: BetterSQLite3Database<typeof schema>;
  readonly raw: Database.Database;
  readonly file: string;
  readonly damage: Damage;
  /** SQLite's setting for commits, unless a transaction uses another. */
  readonly synchronous: "FULL" | "NORMAL";
  /** Runs `act` before the database closes. */
  onClose(act: () => void): void;
  close(): void;
}

export interface OpenOptions {
  /** Only reads: takes no lock, runs no migration. */
  readonly readOnly?: boolean;
  /** Writes a few rows next to a running server: takes no lock, runs no migration. Only for commands. */
  readonly beside?: boolean;
  /** FULL (the default) survives a power cut; NORMAL may lose the last commits then, but never damages the file. */
  readonly synchronous?: Db["synchronous"];
  readonly migrationsFolder?: string;
}

/**
 * Opens and migrates `file`, and creates its folder if necessary. Throws DatabaseRefused for a damaged file, for one of a
 * newer program, for a missing or outdated one that is opened read-only or beside a server, and for a migration that breaks
 * a reference. Throws DatabaseInUse when another process writes to it.
 */
export function openDatabase(file: string, options: OpenOptions = {}): Db {
  const readOnly = options.readOnly === true;
  const guest = readOnly || options.beside === true;
  if (guest && !existsSync(file))
    throw new DatabaseRefused(`There is no database at ${file}. Set SPRINGLINE_DATA to the server's data folder.`);
  if (options.beside === true) refuseFenced(file);
  if (!guest) mkdirSync(dirname(file), { recursive: true });
  const lock = guest ? undefined : acquireWriterLock(file);
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
  if (options.readOnly !== true) refuseDamaged(raw);
  refuseNewer(raw, file, folder);
  const orm = drizzle(raw, { schema });
  if (options.readOnly === true || options.beside === true) {
    refuseOlder(raw, file, folder);
    raw.pragma("busy_timeout = 10000");
  } else {
    raw.pragma("journal_mode = WAL");
    raw.pragma(`synchronous = ${options.synchronous ?? "FULL"}`);
    // Waiting blocks the whole process. Only a backup ever competes, and a failed commit is retried anyway.
    raw.pragma("busy_timeout = 1000");
    for (const end of ["", "-wal", "-shm"]) if (existsSync(`${file}${end}`)) chmodSync(`${file}${end}`, 0o600);
    runMigrations(raw, orm, folder);
  }
  raw.pragma("foreign_keys = ON");
  const closing: (() => void)[] = [];
  return {
    orm,
    raw,
    file,
    damage: watchDamage(raw),
    synchronous: options.synchronous ?? "FULL",
    onClose: (act) => closing.push(act),
    close() {
      for (const act of closing.splice(0)) act();
      raw.close();
      lock?.release();
    },
  };
}

/** Reads every page once, before anything is written: writing to a damaged file may destroy good pages too. */
function refuseDamaged(raw: Database.Database): void {
  const damage = damageIn(raw);
  if (damage === undefined) return;
  throw new DatabaseRefused(
    `The database ${raw.name} is damaged (${damage.split("\n")[0]}). It was not opened and nothing was changed. Restore the latest backup: npm run -s restore -- FILE`,
  );
}
