/**
 * The one SQLite database of an installation: opened once by the composition root, never at import. Opening takes the
 * writer lock, refuses a file of a newer program, and brings the tables up to date.
 */
import { chmodSync, existsSync, mkdirSync, readdirSync, rmSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import Database from "better-sqlite3";
import { type BetterSQLite3Database, drizzle } from "drizzle-orm/better-sqlite3";
import { migrate } from "drizzle-orm/better-sqlite3/migrator";
import { readMigrationFiles } from "drizzle-orm/migrator";
import { type Damage, watchDamage } from "./damage.ts";
import { acquireWriterLock, type WriterLock } from "./repos/lock-repo.ts";
import * as schema from "./schema.ts";
import { damageIn } from "./soundness.ts";

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

/** The file cannot be used by this program; the message says what to do and is fit to be shown. */
export class DatabaseRefused extends Error {
  override readonly name = "DatabaseRefused";
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

/**
 * Drizzle migrates inside a transaction, where `PRAGMA foreign_keys` does nothing, so a rebuilt table would take its
 * child rows with it: keys are switched off around the whole run and every reference is checked before they count again.
 */
function runMigrations(raw: Database.Database, orm: BetterSQLite3Database<typeof schema>, folder: string): void {
  keepCopyBefore(raw, folder);
  raw.pragma("foreign_keys = OFF");
  migrate(orm, { migrationsFolder: folder });
  const broken = raw.pragma("foreign_key_check") as unknown[];
  if (broken.length > 0)
    throw new DatabaseRefused(`Updating the database left ${broken.length} broken references. Restore the backup.`);
}

/** How many copies from before a migration are kept; the oldest goes. */
const COPIES_KEPT = 3;

/** Before an older database is changed: a whole copy beside it, `<database>.before-<newest migration>-<time>`. */
function keepCopyBefore(raw: Database.Database, folder: string): void {
  const applied = new Set(appliedMigrations(raw));
  const pending = knownMigrations(folder).filter((at) => !applied.has(at));
  if (applied.size === 0 || pending.length === 0 || raw.memory) return;
  const stamp = new Date().toISOString().replace(/[-:]|\.\d+/g, "");
  const before = `${raw.name}.before-${Math.max(...pending)}-`;
  if (!existsSync(`${before}${stamp}`)) raw.prepare("vacuum into ?").run(`${before}${stamp}`);
  chmodSync(`${before}${stamp}`, 0o600);
  const beside = dirname(raw.name);
  const time = (name: string) => name.slice(name.lastIndexOf("-") + 1);
  const copies = readdirSync(beside).filter((name) => name.startsWith(`${basename(raw.name)}.before-`));
  copies.sort((a, b) => time(b).localeCompare(time(a)));
  for (const name of copies.slice(COPIES_KEPT)) rmSync(join(beside, name), { force: true });
}

/** When each known migration was made, which is how drizzle tells them apart in the database. */
const knownMigrations = (folder: string): number[] =>
  readMigrationFiles({ migrationsFolder: folder }).map((m) => m.folderMillis);

function appliedMigrations(raw: Database.Database): number[] {
  const table = raw.prepare("select 1 from sqlite_master where type = 'table' and name = '__drizzle_migrations'").get();
  if (!table) return [];
  return raw.prepare<[], number>("select created_at from __drizzle_migrations").pluck().all().map(Number);
}

/** Throws DatabaseRefused when the file knows a migration that this program does not. */
export function refuseNewer(raw: Database.Database, file: string, folder = defaultMigrations()): void {
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
