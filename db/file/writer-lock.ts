/**
 * One writing process a database. The lock is an open transaction on a small file beside the database, so that the
 * kernel gives it up the moment its process dies, however it dies. A row with a process id and a heartbeat was
 * rejected: ids are reused, process 1 lives in every container, and a stale row makes the next start wait.
 * It holds on a local disk; network file systems that lie about locks are no place for SQLite anyway.
 */
import { existsSync, mkdirSync } from "node:fs";
import { dirname } from "node:path";
import Database from "better-sqlite3";

export interface WriterLock {
  release(): void;
}

/** Another process writes to this database. The message is fit to be shown. */
export class DatabaseInUse extends Error {
  override readonly name = "DatabaseInUse";
}

/** Held here too: a handle that nobody refers to any more is collected, and its lock would be gone without a word. */
const held = new Set<Database.Database>();

/** Takes the lock or throws DatabaseInUse at once. Held until `release()` or the end of the process. */
export function acquireWriterLock(databaseFile: string): WriterLock {
  if (databaseFile === ":memory:") return { release: () => undefined };
  mkdirSync(dirname(databaseFile), { recursive: true });
  const lock = new Database(`${databaseFile}.lock`, { timeout: 0 });
  try {
    lock.exec("create table if not exists holder (id integer primary key, pid integer not null)");
    lock.prepare("insert or replace into holder (id, pid) values (1, ?)").run(process.pid);
    lock.exec("begin immediate");
  } catch (error) {
    const pid = holder(lock);
    lock.close();
    if (!isBusy(error)) throw error;
    throw new DatabaseInUse(
      `Another process${pid === undefined ? "" : ` (${pid})`} is using the database ${databaseFile}. ` +
        "Only one may write to it: stop that one first, or start this one with a database of its own.",
    );
  }
  held.add(lock);
  return {
    release() {
      held.delete(lock);
      lock.close();
    },
  };
}

/** Whether a process writes to this database now. Takes nothing and makes nothing. */
export function isInUse(databaseFile: string): boolean {
  const file = `${databaseFile}.lock`;
  if (!existsSync(file)) return false;
  const lock = new Database(file, { timeout: 0 });
  try {
    lock.exec("begin immediate; rollback");
    return false;
  } catch (error) {
    if (isBusy(error)) return true;
    throw error;
  } finally {
    lock.close();
  }
}

function holder(lock: Database.Database): number | undefined {
  try {
    return lock.prepare<[], number>("select pid from holder where id = 1").pluck().get();
  } catch {
    // Only the id for the message is lost.
    return undefined;
  }
}

const isBusy = (error: unknown): boolean =>
  error instanceof Error && "code" in error && String(error.code).startsWith("SQLITE_BUSY");
