/** The write-ahead log is folded beside the server, and by its commits when that thread is gone. */
import { statSync } from "node:fs";
import { afterEach, beforeEach, expect, test } from "vitest";
import type { Db } from "#db/connection.ts";
import { checkpointBeside } from "#db/file/checkpoints.ts";
import { appendRow, insertHeader } from "#db/repos/doc-log-repo.ts";
import { appendTransaction } from "#db/transaction.ts";
import { eventually } from "#tests/support/eventually.ts";
import { type TempDb, tempDb } from "#tests/support/temp-db.ts";

let t: TempDb;
let db: Db;
beforeEach(() => {
  t = tempDb();
  db = t.open();
  insertHeader(db, "plan/p", "g", 1);
});
afterEach(() => t.remove());

const PAGE = 4096;
const KILOBYTES = new Uint8Array(20 * 1024);
const write = (times: number) => {
  for (let n = 0; n < times; n++)
    appendTransaction(db, () => appendRow(db, { name: "plan/p", bytes: KILOBYTES, actorId: "ines", at: n }));
};
const sizeOf = (end = "") => statSync(`${db.file}${end}`).size;
const pagesAtOnce = () => db.raw.pragma("wal_autocheckpoint", { simple: true });
const silent = { warn: () => undefined };

test("what was written reaches the database file although no commit folds, and the log begins anew", async () => {
  const checkpoints = checkpointBeside(db, { log: silent, everyMs: 5 });
  expect(pagesAtOnce()).toBeGreaterThan(10_000);
  const before = sizeOf();
  write(100);
  await eventually("it is in the file", () => sizeOf() - before > 90 * KILOBYTES.length);
  await eventually("a commit overwrites what has been folded", () => {
    const log = sizeOf("-wal");
    write(1);
    return sizeOf("-wal") === log;
  });
  await checkpoints.stop();
});

test("with the thread gone commits fold by themselves, as SQLite does", async () => {
  const checkpoints = checkpointBeside(db, { log: silent, everyMs: 60_000 });
  await checkpoints.stop();
  expect(pagesAtOnce()).toBe(1000);
  const before = sizeOf();
  write(300);
  expect(sizeOf() - before).toBeGreaterThan(1000 * PAGE * 0.9);
});

test("a database that is known to be damaged is not written to by the thread either", async () => {
  const checkpoints = checkpointBeside(db, { log: silent, everyMs: 5 });
  db.damage.found("for a test");
  await checkpoints.stop();
  const before = sizeOf();
  await new Promise((resolve) => setTimeout(resolve, 30));
  expect(sizeOf()).toBe(before);
});
