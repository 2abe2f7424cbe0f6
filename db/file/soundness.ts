/** Whether the database file is undamaged, and can be read and written. */
import { writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { Worker } from "node:worker_threads";
import Database from "better-sqlite3";

/** The program of the checking thread, given as text so that it needs no file of its own in the build. */
const CHECK = `
const { parentPort, workerData } = require("node:worker_threads");
const raw = new (require(workerData.driver))(workerData.file, { readonly: true, timeout: 10000 });
try { parentPort.postMessage(raw.pragma("quick_check(1)", { simple: true })); } finally { raw.close(); }
`;

/**
 * Runs `PRAGMA quick_check` on a thread of its own, since it reads every page: a few milliseconds per megabyte, during which
 * nothing could be relayed. Resolves with what is wrong, or undefined for an undamaged file. Rejects when the file could not
 * be checked, for example because it is locked: that is not damage.
 */
export function quickCheck(file: string): Promise<string | undefined> {
  return new Promise((resolve, reject) => {
    const driver = createRequire(import.meta.url).resolve("better-sqlite3");
    const worker = new Worker(CHECK, { eval: true, workerData: { driver, file } });
    worker.unref();
    worker.once("message", (said: unknown) => resolve(said === "ok" ? undefined : String(said)));
    worker.once("error", (error) => {
      const damage = damageOf(error);
      if (damage === undefined) reject(error);
      else resolve(damage);
    });
    worker.once("exit", () => reject(new Error("the check ended without an answer")));
  });
}

/** The same on an open connection and this thread: at the start, before anybody is served. */
export function damageIn(raw: Database.Database): string | undefined {
  try {
    const said = raw.pragma("quick_check(1)", { simple: true });
    return said === "ok" ? undefined : String(said);
  } catch (error) {
    const damage = damageOf(error);
    if (damage === undefined) throw error;
    return damage;
  }
}

/** The same for a file that a running server may have open. Throws when it cannot be opened for another reason. */
export function damageInFile(file: string): string | undefined {
  const raw = new Database(file, { readonly: true, timeout: 10_000 });
  try {
    return damageIn(raw);
  } finally {
    raw.close();
  }
}

/** The message of an error that SQLite itself calls damage; undefined for a file that is locked, forbidden or gone. */
export function damageOf(error: unknown): string | undefined {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  return error instanceof Error && /^SQLITE_(CORRUPT|NOTADB)/.test(code) ? error.message : undefined;
}

/** The file next to the database by which a command asks the running server to check it now. */
export const lookMark = (file: string): string => `${file}.look`;

/** Asks for that check. If the file cannot be written, the server checks by itself, later. */
export function askForLook(file: string): void {
  try {
    writeFileSync(lookMark(file), "", { mode: 0o600 });
  } catch {
    return;
  }
}

/**
 * Writes and commits for real, to the number in the file's header that SQLite leaves to the program. Throws like any other
 * write, for example when the disk is full.
 */
export function writeProbe(raw: Database.Database): void {
  const now = Number(raw.pragma("user_version", { simple: true }));
  raw.pragma(`user_version = ${(now + 1) % 1_000_000}`);
}
