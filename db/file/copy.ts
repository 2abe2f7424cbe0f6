/** Whole copies of a database file: made while somebody writes to it, and looked at before they are trusted. */

import { chmodSync, existsSync } from "node:fs";
import Database from "better-sqlite3";
import { DatabaseRefused, refuseNewer } from "./migrations.ts";

/**
 * Writes a copy of `file`, as it is at one moment, to `target` (mode 0600), which must not be there. It is one reading
 * transaction: page-by-page copying begins anew whenever another process writes, and might never end.
 */
export function copyDatabase(file: string, target: string): void {
  if (!existsSync(file)) throw new DatabaseRefused(`There is no database at ${file}.`);
  const raw = new Database(file, { readonly: true, timeout: 10_000 });
  try {
    raw.prepare("vacuum into ?").run(target);
  } finally {
    raw.close();
  }
  chmodSync(target, 0o600);
}

/**
 * What is wrong with a database file that nobody has open, in a few words; undefined when it is whole: every page, every
 * index and every reference. Throws DatabaseRefused when it was written by a newer program.
 */
export function databaseFault(file: string): string | undefined {
  let raw: Database.Database | undefined;
  try {
    raw = new Database(file, { readonly: true });
    const whole = raw.pragma("integrity_check(1)", { simple: true });
    if (whole !== "ok") return "its pages do not agree with each other";
    if (!raw.prepare("select 1 from sqlite_master where name = '__drizzle_migrations'").get())
      return "it is a database of another program";
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
 * Forgets in a database that nobody has open whose page each client id is: what was written since belongs to the pages that
 * still hold it. A database that notes none is not written to.
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
