/** Transactions: either all statements take effect, or none. */
import type { Db } from "./connection.ts";
import { oncePerDatabase } from "./once-per-database.ts";

const transactions = oncePerDatabase(({ raw }) => raw.transaction((work: () => unknown) => work()));

/** Runs `work` as one transaction, or as a savepoint inside the caller's. Refuses a promise, which would end too late. */
export function inTransaction<T>(db: Db, work: () => T): T {
  return transactions(db).immediate(work) as T; // what work returns
}

/**
 * One transaction of the document log, committed without waiting for the disk: it survives a kill, and a power cut once
 * `syncLog` has resolved. The setting applies from the next transaction on, so it is set around this one alone.
 */
export function appendTransaction<T>(db: Db, work: () => T): T {
  db.raw.pragma("synchronous = NORMAL");
  try {
    return inTransaction(db, work);
  } finally {
    db.raw.pragma(`synchronous = ${db.synchronous}`);
  }
}

export const isInTransaction = (db: Db): boolean => db.raw.inTransaction;
