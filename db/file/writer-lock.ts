/**
 * One writing process per database. The lock is an open transaction on a small file next to the database, which the
 * operating system releases as soon as the process dies. It needs a local disk: network file systems with unreliable locks
 * are unsuitable for SQLite anyway.
 */
import { existsSync, mkdirSync } from "node:fs";
import { dirname } from "node:path";
import Database from "better-sqlite3";
import { fenceSentence } from "./fence.ts";

export interface WriterLock {
  release(): void;
}

/** Another process writes to this database. The message can be shown. */
export class DatabaseInUse extends Error {
  override readonly name = "DatabaseInUse";
}

/** Keeps the handles referenced: one that is garbage-collected would silently lose its lock. */
const held = new Set<Database.Database>();

export interface LockOptions {
  /** Takes it although a fence says that the studio is at another place. For moving alone. */
  readonly pastFence?: boolean;
}

/** Takes the lock or throws DatabaseInUse at once, also when a fence stands. Held until `release()` or the end of the process. */
export function acquireWriterLock(databaseFile: string, options: LockOptions = {}): WriterLock {
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
        "Only one process may write to it: stop that one first, or set SPRINGLINE_DATA to another folder.",
    );
  }
  const fence = options.pastFence === true ? undefined : fenceSentence(databaseFile);
  if (fence !== undefined) {
    lock.close();
    throw new DatabaseInUse(fence);
  }
  held.add(lock);
  return {
    release() {
      held.delete(lock);
      lock.close();
    },
  };
}

/** Throws DatabaseInUse when a fence stands beside the database; for who writes without the lock. */
export function refuseFenced(databaseFile: string): void {
  const fence = fenceSentence(databaseFile);
  if (fence !== undefined) throw new DatabaseInUse(fence);
}

/** Whether a process has this database open for writing. Takes no lock and creates nothing. */
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
    // Only needed for the message.
    return undefined;
  }
}

const isBusy = (error: unknown): boolean =>
  error instanceof Error && "code" in error && String(error.code).startsWith("SQLITE_BUSY");
