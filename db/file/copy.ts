/** Copies a database file while somebody may be writing to it, and checks such a copy. */

import { chmodSync, existsSync, rmSync } from "node:fs";
import Database from "better-sqlite3";
import { FIRST_PREVIOUS, type RecordHead } from "#lib/record/chain.ts";
import { DatabaseRefused, refuseNewer } from "./migrations.ts";

/** What a database held at one moment, to be compared with a copy of it. */
export interface DatabaseFacts {
  /** Rows by table. */
  readonly rows: Readonly<Record<string, number>>;
  readonly head: RecordHead;
}

/** Pages between two turns of the event loop: about 8 MB. */
const PAGES_AT_ONCE = 2000;

/**
 * Writes a copy of `file`, as it is at one moment, to `target` (mode 0600), which must not exist, and tells what it held at that
 * moment. The copy goes page by page inside one read transaction, which holds the moment still: writers go on, and nothing begins
 * anew when they commit. Leaves nothing behind when it fails.
 */
export async function copyDatabase(file: string, target: string): Promise<DatabaseFacts> {
  if (!existsSync(file))
    throw new DatabaseRefused(`There is no database at ${file}. Set SPRINGLINE_DATA to the server's data folder.`);
  const raw = new Database(file, { readonly: true, timeout: 10_000 });
  try {
    raw.exec("begin");
    const facts = factsIn(raw);
    await raw.backup(target, { progress: () => PAGES_AT_ONCE });
    standAlone(target);
    return facts;
  } catch (error) {
    for (const end of ["", "-journal", "-wal", "-shm"]) rmSync(`${target}${end}`, { force: true });
    throw error;
  } finally {
    raw.close();
  }
}

/** Its pages say that a write-ahead log belongs to it; opened by somebody else, it would get one beside it. */
export function standAlone(file: string): void {
  chmodSync(file, 0o600);
  const raw = new Database(file);
  try {
    raw.pragma("journal_mode = delete");
  } finally {
    raw.close();
  }
}

/** Puts what a process that was killed left in the write-ahead log into the file, of a database that nobody else has open. */
export function foldWriteAheadLog(file: string): void {
  const raw = new Database(file);
  try {
    raw.pragma("wal_checkpoint(TRUNCATE)");
  } finally {
    raw.close();
  }
}

/** Of a database file that nobody has open. */
export function factsOf(file: string): DatabaseFacts {
  const raw = new Database(file, { readonly: true });
  try {
    return factsIn(raw);
  } finally {
    raw.close();
  }
}

function factsIn(raw: Database.Database): DatabaseFacts {
  const tables = raw
    .prepare<[], string>(
      "select name from sqlite_master where type = 'table' and name not like 'sqlite_%' order by name",
    )
    .pluck()
    .all();
  const count = (table: string) => Number(raw.prepare(`select count(*) from "${table}"`).pluck().get());
  const rows = Object.fromEntries(tables.map((table) => [table, count(table)]));
  const newest = () => raw.prepare<[], RecordHead>("select seq, hash from record order by seq desc limit 1").get();
  return { rows, head: (tables.includes("record") ? newest() : undefined) ?? { seq: 0, hash: FIRST_PREVIOUS } };
}

/** The table that a restored database has emptied (`forgetClientIds`), so that its rows cannot be compared. */
const FORGOTTEN = "doc_client";

/** What a copy holds otherwise than it should, in a few words; undefined when the rows of each table and the record agree. */
export function factsDiffer(should: DatabaseFacts, has: DatabaseFacts): string | undefined {
  const tables = [...new Set([...Object.keys(should.rows), ...Object.keys(has.rows)])];
  const other = tables.find((table) => table !== FORGOTTEN && should.rows[table] !== has.rows[table]);
  if (other !== undefined)
    return `it has ${has.rows[other] ?? "no"} rows in ${other} instead of ${should.rows[other] ?? "none"}`;
  const sameHead = should.head.seq === has.head.seq && should.head.hash === has.head.hash;
  return sameHead ? undefined : `its record ends at row ${has.head.seq}, not as it did at row ${should.head.seq}`;
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
