/**
 * The one SQLite database of an installation: opened once by the composition root, never at import. Opening takes the
 * writer lock, refuses a file of a newer program, and brings the tables up to date.
 */
import { chmodSync, existsSync, mkdirSync } from "node:fs";
import { dirname } from "node:path";
import Database from "better-sqlite3";
import { type BetterSQLite3Database, drizzle } from "drizzle-orm/better-sqlite3";
import { type Damage, watchDamage } from "./file/damage.ts";
import { DatabaseRefused, defaultMigrations, refuseNewer, refuseOlder, runMigrations } from "./file/migrations.ts";
import { damageIn } from "./file/soundness.ts";
import { acquireWriterLock, type WriterLock } from "./file/writer-lock.ts";
import * as schema from "./schema.ts";

export interface Db {
  readonly orm: BetterSQLite3Database<typeof schema>;
  readonly raw: Database.Database;
  readonly file: string;
  readonly damage: Damage;
  /** How commits reach the disk, unless a transaction says otherwise. */
  readonly synchronous: "FULL" | "NORMAL";
  /** What else is to be let go of when the database closes. */
  onClose(act: () => void): void;
  close(): void;
}

export interface OpenOptions {
  /** Reads only: takes no lock, runs no migration. */
  readonly readOnly?: boolean;
  /** Writes a few rows beside a running server: takes no lock, runs no migration. For a command at the keyboard only. */
  readonly beside?: boolean;
  /** FULL (the default) survives a power cut; NORMAL may then lose the last commits, though never the file. */
  readonly synchronous?: Db["synchronous"];
  readonly migrationsFolder?: string;
}

/**
 * Opens and migrates `file`, making its folder when needed. Throws DatabaseRefused for a file of a newer program, a
 * missing or out-of-date file opened read-only or beside a server, or a migration that breaks a reference; DatabaseInUse when another
 * process writes to it.
 */
export function openDatabase(file: string, options: OpenOptions = {}): Db {
  const readOnly = options.readOnly === true;
  const guest = readOnly || options.beside === true;
  if (guest && !existsSync(file)) throw new DatabaseRefused(`There is no database at ${file}.`);
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
    // Waiting stops the whole process; nobody but a backup ever competes, and a failed commit is tried again anyway.
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

/** Every page is read once, before anything is: what is written on top of damage may take good pages with it. */
function refuseDamaged(raw: Database.Database): void {
  const damage = damageIn(raw);
  if (damage === undefined) return;
  throw new DatabaseRefused(
    `The database ${raw.name} is damaged (${damage.split("\n")[0]}). It was not opened and nothing was changed: restore the latest backup with npm run -s restore -- FILE.`,
  );
}
