/** Brings the tables of a database up to date, and refuses one that this program cannot use. */
import { chmodSync, existsSync, readdirSync, rmSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import type Database from "better-sqlite3";
import { migrate } from "drizzle-orm/better-sqlite3/migrator";
import { readMigrationFiles } from "drizzle-orm/migrator";

/** This program cannot use the file; the message says what to do and can be shown. */
export class DatabaseRefused extends Error {
  override readonly name = "DatabaseRefused";
}

/**
 * Drizzle migrates inside a transaction, where `PRAGMA foreign_keys` has no effect, so rebuilding a table would delete its
 * child rows. Foreign keys are therefore off during the whole run, and every reference is checked afterwards.
 */
export function runMigrations(raw: Database.Database, orm: Parameters<typeof migrate>[0], folder: string): void {
  keepCopyBefore(raw, folder);
  raw.pragma("foreign_keys = OFF");
  migrate(orm, { migrationsFolder: folder });
  const broken = raw.pragma("foreign_key_check") as unknown[];
  if (broken.length > 0)
    throw new DatabaseRefused(
      `Updating the database left ${broken.length} broken references. Restore the copy from before the update.`,
    );
}

/** How many copies from before a migration are kept; the oldest are deleted. */
const COPIES_KEPT = 3;

/** Before an older database is migrated, it is copied to `<database>.before-<newest migration>-<time>`. */
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

/** The creation times of the known migrations, by which drizzle identifies them in the database. */
const knownMigrations = (folder: string): number[] =>
  readMigrationFiles({ migrationsFolder: folder }).map((m) => m.folderMillis);

function appliedMigrations(raw: Database.Database): number[] {
  const table = raw.prepare("select 1 from sqlite_master where type = 'table' and name = '__drizzle_migrations'").get();
  if (!table) return [];
  return raw.prepare<[], number>("select created_at from __drizzle_migrations").pluck().all().map(Number);
}

/** Throws DatabaseRefused when the file has a migration that this program does not know. */
export function refuseNewer(raw: Database.Database, file: string, folder = defaultMigrations()): void {
  const known = new Set(knownMigrations(folder));
  if (appliedMigrations(raw).every((at) => known.has(at))) return;
  throw new DatabaseRefused(
    `The database ${file} was written by a newer version of Springline. Nothing was changed. Update Springline first.`,
  );
}

export function refuseOlder(raw: Database.Database, file: string, folder: string): void {
  const applied = new Set(appliedMigrations(raw));
  if (knownMigrations(folder).every((at) => applied.has(at))) return;
  throw new DatabaseRefused(`The database ${file} is of an older version. Start the server once to update it.`);
}

/** Next to this folder in the sources; in the working folder when the server runs from its bundle. */
export function defaultMigrations(): string {
  const beside = join(import.meta.dirname, "../migrations");
  return existsSync(beside) ? beside : join(process.cwd(), "db", "migrations");
}
