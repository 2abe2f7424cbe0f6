/** Copies a database file while somebody may be writing to it, and checks such a copy. */

import { chmodSync, existsSync } from "node:fs";
import Database from "better-sqlite3";
import { DatabaseRefused, refuseNewer } from "./migrations.ts";

/**
 * Writes a copy of `file`, as it is at one moment, to `target` (mode 0600), which must not exist. It is one read
 * transaction: page-by-page copying would start over whenever another process writes, and might never finish.
 */
export function copyDatabase(file: string, target: string): void {
  if (!existsSync(file))
    throw new DatabaseRefused(`There is no database at ${file}. Set SPRINGLINE_DATA to the server's data folder.`);
  const raw = new Database(file, { readonly: true, timeout: 10_000 });
  try {
    raw.prepare("vacuum into ?").run(target);
  } finally {
    raw.close();
  }
  chmodSync(target, 0o600);
}

/**
 * What is wrong with a database file that nobody has open, in a few words; undefined when every page, index and reference is
 * right. Throws DatabaseRefused when it was written by a newer program.
 */
export function databaseFault(file: string): string | undefined {
  let raw: Database.Database | undefined;
  try {
    raw = new Database(file, { readonly: true });
    const whole = raw.pragma("integrity_check(1)", { simple: true });
    if (whole !== "ok") return "its pages are damaged";
    if (!raw.prepare("select 1 from sqlite_master where name = '__drizzle_migrations'").get())
      return "it is another program's database";
    refuseNewer(raw, file);
    return (raw.pragma("foreign_key_check") as unknown[]).length > 0 ? "it has broken references" : undefined;
  } catch (error) {
    if (error instanceof DatabaseRefused) throw error;
    return "it cannot be read as a database";
  } finally {
    raw?.close();
  }
}

/**
 * Forgets the owners of client ids, in a database that nobody has open, so that any page that holds a change made since may
 * bring it. Does not write to a database that has no owners.
 */
export function forgetClientIds(file: string): void {
  const raw = new Database(file);
  try {
    const noted = raw.prepare("select 1 from sqlite_master where name = 'doc_client'").get();
    if (noted && raw.prepare("select 1 from doc_client limit 1").get()) raw.exec("delete from doc_client");
  } finally {
    raw.close();
  }
}
