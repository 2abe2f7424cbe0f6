/** Whether the database file is whole, can be read and can be written. */
import { writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { Worker } from "node:worker_threads";
import Database from "better-sqlite3";

/** In a thread of its own, given as text: the bundled server is one file, from which no second one could be started. */
const CHECK = `
const { parentPort, workerData } = require("node:worker_threads");
const raw = new (require(workerData.driver))(workerData.file, { readonly: true, timeout: 10000 });
try { parentPort.postMessage(raw.pragma("quick_check(1)", { simple: true })); } finally { raw.close(); }
`;

/**
 * `PRAGMA quick_check` reads every page of the file: a few milliseconds a megabyte, in which nothing could be relayed.
 * So it has a thread and a connection of its own. Gives what is wrong, undefined when the file is whole. Rejects when it
 * could not be looked at (it is locked, there is no thread to be had): that is no damage.
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

/** The same at once, on an open connection: at the start, before anybody is served. */
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

/** The same of a file that a running server may have open. Throws when it cannot be opened for another reason. */
export function damageInFile(file: string): string | undefined {
  const raw = new Database(file, { readonly: true, timeout: 10_000 });
  try {
    return damageIn(raw);
  } finally {
    raw.close();
  }
}

/** What SQLite itself calls damage; undefined for a file that is only locked, forbidden or gone. */
export function damageOf(error: unknown): string | undefined {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  return error instanceof Error && /^SQLITE_(CORRUPT|NOTADB)/.test(code) ? error.message : undefined;
}

/** A file beside the database by which a command asks the running server to look through it now. */
export const lookMark = (file: string): string => `${file}.look`;

/** Asks for that look. A folder that takes no file takes no mark: the server looks by itself, later. */
export function askForLook(file: string): void {
  try {
    writeFileSync(lookMark(file), "", { mode: 0o600 });
  } catch {
    return;
  }
}

/**
 * Really writes and commits, in the one number of the file's header that is free for its program to use. Throws as any
 * write would: a full disk, a file that may not be written.
 */
export function writeProbe(raw: Database.Database): void {
  const now = Number(raw.pragma("user_version", { simple: true }));
  raw.pragma(`user_version = ${(now + 1) % 1_000_000}`);
}
