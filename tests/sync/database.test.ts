/** Opening the database: one writer, known migrations, a backup that is whole. */

import { type ChildProcess, spawn } from "node:child_process";
import { copyFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { openDatabase } from "#db/connection.ts";
import { copyDatabase } from "#db/file/copy.ts";
import { DatabaseRefused } from "#db/file/migrations.ts";
import { DatabaseInUse } from "#db/file/writer-lock.ts";
import { eventually } from "#tests/support/eventually.ts";
import { type TempDb, tempDb } from "#tests/support/temp-db.ts";

let temp: TempDb;
const children: ChildProcess[] = [];
beforeEach(() => {
  temp = tempDb();
});
afterEach(() => {
  for (const child of children.splice(0)) child.kill("SIGKILL");
  temp.remove();
});

/** A process that opens the database and holds it, or says why it could not. */
const HOLDER = `import { openDatabase } from "#db/connection.ts";
    try { openDatabase(process.argv[1]); console.log("open"); setInterval(() => undefined, 1000); }
    catch (error) { console.log(error.message); process.exit(1); }`;

function otherProcess(file: string, script = HOLDER): { child: ChildProcess; said: () => string } {
  const root = join(import.meta.dirname, "../..");
  const args = ["--expose-gc", "--import", "tsx", "--input-type=module", "-e", script, file];
  const child = spawn(process.execPath, args, { cwd: root, stdio: ["ignore", "pipe", "inherit"] });
  children.push(child);
  let said = "";
  child.stdout?.on("data", (chunk: Buffer) => {
    said += chunk.toString();
  });
  return { child, said: () => said };
}

test("a second process is told in a sentence, and exits; when the first has gone it gets in", async () => {
  const db = temp.open();
  const second = otherProcess(temp.file);
  await eventually("it exits", () => second.child.exitCode !== null, 20_000);
  expect(second.child.exitCode).toBe(1);
  expect(second.said()).toContain(`Another process (${process.pid}) is using the database ${temp.file}`);
  db.close();
  const third = otherProcess(temp.file);
  await eventually("it is open", () => third.said().includes("open"), 20_000);
});

test("a process killed outright leaves no lock behind", async () => {
  temp.open().close();
  const holder = otherProcess(temp.file);
  await eventually("it is open", () => holder.said().includes("open"), 20_000);
  expect(() => openDatabase(temp.file)).toThrow(DatabaseInUse);
  holder.child.kill("SIGKILL");
  await eventually("it is dead", () => holder.child.signalCode === "SIGKILL");
  const db = temp.open();
  expect(db.raw.open).toBe(true);
});

test("a lock outlasts the collection of what nobody refers to", async () => {
  const script = `import { openDatabase } from "#db/connection.ts";
    openDatabase(process.argv[1]);
    setTimeout(() => { gc(); setTimeout(() => { gc(); console.log("collected"); }, 20); }, 20);
    setInterval(() => undefined, 1000);`;
  const holder = otherProcess(temp.file, script);
  await eventually("it collected", () => holder.said().includes("collected"), 20_000);
  expect(() => openDatabase(temp.file)).toThrow(DatabaseInUse);
});

test("twice in one process is refused as well; reading needs no lock", () => {
  const db = temp.open();
  expect(() => openDatabase(temp.file)).toThrow(DatabaseInUse);
  const reader = temp.open({ readOnly: true });
  expect(reader.raw.prepare("select count(*) from plan").pluck().get()).toBe(0);
  expect(() => reader.raw.prepare("delete from plan").run()).toThrow(/readonly/);
  reader.close();
  db.close();
});

test("it opens durable: WAL, FULL, foreign keys", () => {
  const { raw } = temp.open();
  expect(raw.pragma("journal_mode", { simple: true })).toBe("wal");
  expect(raw.pragma("synchronous", { simple: true })).toBe(2);
  expect(raw.pragma("foreign_keys", { simple: true })).toBe(1);
});

test("a database of a newer program is refused and left as it is, also for reading", () => {
  const db = temp.open();
  db.raw.prepare("insert into __drizzle_migrations (hash, created_at) values ('later', 9999999999999)").run();
  db.close();
  for (const readOnly of [false, true]) {
    expect(() => openDatabase(temp.file, { readOnly })).toThrow(DatabaseRefused);
    expect(() => openDatabase(temp.file, { readOnly })).toThrow(/newer version/);
  }
});

test("reading what is not there says so", () => {
  expect(() => openDatabase(join(temp.folder, "none.sqlite"), { readOnly: true })).toThrow(/There is no database/);
});

test("a copy of a database in use is whole", async () => {
  const db = temp.open();
  const add = db.raw.prepare("insert into document (name, generation, created_at) values (?, 'g', 0)");
  for (let i = 0; i < 500; i++) add.run(`plan/p${i}`);
  const target = join(temp.folder, "copy.sqlite");
  await copyDatabase(temp.file, target);
  copyFileSync(target, join(temp.folder, "again.sqlite"));
  const copy = openDatabase(join(temp.folder, "again.sqlite"));
  expect(copy.raw.prepare("select count(*) from document").pluck().get()).toBe(500);
  expect(copy.raw.pragma("integrity_check", { simple: true })).toBe("ok");
  copy.close();
});
