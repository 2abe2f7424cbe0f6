/** Backing up and restoring as the owner does it: the commands as processes, a server that writes, a kill -9. */
import { type ChildProcess, spawn } from "node:child_process";
import { createHash } from "node:crypto";
import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { afterEach, beforeEach, expect, test } from "vitest";
import { openDatabase } from "#db/connection.ts";

const ROOT = join(import.meta.dirname, "../..");
const SECRET = "a secret of this test alone, long enough";
let folder: string;
let file: string;
const children: ChildProcess[] = [];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "springline-backup-"));
  file = join(folder, "data", "springline.sqlite");
  openDatabase(file).close();
  writeFileSync(join(folder, "data", "secret"), SECRET, { mode: 0o600 });
});
afterEach(() => {
  for (const child of children.splice(0)) child.kill("SIGKILL");
  rmSync(folder, { recursive: true, force: true });
});

interface Said {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

function start(words: readonly string[]): { child: ChildProcess; ended: Promise<Said> } {
  const env = { ...process.env, SPRINGLINE_DATA: join(folder, "data"), SPRINGLINE_SECRET: undefined };
  const child = spawn(process.execPath, words, { cwd: ROOT, env });
  children.push(child);
  let out = "";
  let err = "";
  child.stdout?.on("data", (chunk: Buffer) => {
    out += chunk.toString();
  });
  child.stderr?.on("data", (chunk: Buffer) => {
    err += chunk.toString();
  });
  return { child, ended: new Promise((done) => child.once("close", (code) => done({ code, out, err }))) };
}
const run = (command: string, ...args: string[]) => start(["server/cli/command.mjs", command, ...args]).ended;

async function backup(name = "copy.tar"): Promise<string> {
  const said = await run("backup", join(folder, name));
  expect(said).toMatchObject({ code: 0, err: "" });
  return join(folder, name);
}

async function writer(everyMs: number, most = 0) {
  const started = start(["--import", "tsx", "tests/support/writer.ts", file, String(everyMs), String(most)]);
  await new Promise((up) => started.child.stdout?.once("data", up));
  return started;
}

const sha256 = (name: string) => createHash("sha256").update(readFileSync(name)).digest("hex");

function counts(name: string): { documents: number; rows: number; whole: unknown } {
  const raw = new Database(name, { readonly: true });
  const count = (table: string) => Number(raw.prepare(`select count(*) from ${table}`).pluck().get());
  const all = {
    documents: count("document"),
    rows: count("doc_update"),
    whole: raw.pragma("integrity_check", { simple: true }),
  };
  raw.close();
  return all;
}

test("kill -9, then restore: the -wal it left is not read into the restored file, and what was there is kept", async () => {
  const db = openDatabase(file);
  db.raw.prepare("insert into document (name, generation, created_at) values ('plan/kept', 'g', 0)").run();
  db.close();
  const copy = await backup();
  const killed = await writer(1, 40);
  await killed.ended;
  expect(statSync(`${file}-wal`).size).toBeGreaterThan(0);
  writeFileSync(join(folder, "data", "secret"), "another secret, of another installation");

  const said = await run("restore", copy);
  expect(said).toMatchObject({ code: 0, err: "" });
  expect(existsSync(`${file}-wal`) || existsSync(`${file}-shm`)).toBe(false);
  const manifest = JSON.parse(/\{[\s\S]*?\n\}\n/.exec(readFileSync(copy, "latin1"))?.[0] ?? "");
  expect(sha256(file)).toBe(manifest.files["springline.sqlite"].sha256);
  expect(readFileSync(join(folder, "data", "secret"), "utf8")).toBe(SECRET);
  expect(statSync(join(folder, "data", "secret")).mode & 0o777).toBe(0o600);
  openDatabase(file).close();
  expect(counts(file)).toEqual({ documents: 1, rows: 0, whole: "ok" });

  const kept = /kept in (.+)\n/.exec(said.out)?.[1] ?? "";
  expect(counts(join(kept, "springline.sqlite"))).toEqual({ documents: 41, rows: 80, whole: "ok" });
  expect(readdirSync(join(folder, "data")).filter((name) => name.startsWith(".restore"))).toEqual([]);
}, 60_000);

test("backups while twenty commits a second go on are each of one moment; restoring meanwhile is refused", async () => {
  await writer(50);
  const seen: number[] = [];
  for (const name of ["one.tar", "two.tar"]) {
    const copy = await backup(name);
    expect(statSync(copy).mode & 0o777).toBe(0o600);
    const bytes = readFileSync(copy);
    const begin = bytes.indexOf("SQLite format 3\0");
    writeFileSync(join(folder, "out.sqlite"), bytes.subarray(begin));
    const raw = new Database(join(folder, "out.sqlite"), { readonly: true });
    const documents = Number(raw.prepare("select count(*) from document").pluck().get());
    expect(raw.prepare("select count(*) from doc_update").pluck().get()).toBe(documents * 2);
    raw.close();
    seen.push(documents);
  }
  expect(seen[1]).toBeGreaterThan(seen[0] ?? 0);
  const said = await run("restore", join(folder, "one.tar"));
  expect(said.code).toBe(1);
  expect(said.err).toMatch(/^Another process \(\d+\) is using the database .+\n$/);
}, 60_000);

test("a wrong, cut or altered file is refused in one sentence, and nothing is touched", async () => {
  const copy = await backup();
  const before = sha256(file);
  const altered = join(folder, "altered.tar");
  const bytes = readFileSync(copy);
  const at = bytes.indexOf("SQLite format 3\0") + 5000;
  bytes.writeUInt8(bytes.readUInt8(at) ^ 1, at);
  writeFileSync(altered, bytes);
  const cut = join(folder, "cut.tar");
  copyFileSync(copy, cut);
  truncateSync(cut, 9000);
  const newer = join(folder, "newer.tar");
  writeFileSync(
    newer,
    Buffer.from(readFileSync(copy, "latin1").replace('"springlineBackup": 1', '"springlineBackup": 9'), "latin1"),
  );
  writeFileSync(join(folder, "letter.txt"), "Dear studio");
  const refusals: Record<string, RegExp> = {
    [altered]: /is damaged: its springline\.sqlite has changed since the backup/,
    [cut]: /damaged or not a Springline backup/,
    [newer]: /made by a newer version of Springline/,
    [join(folder, "letter.txt")]: /not a Springline backup/,
    [join(folder, "none.tar")]: /There is no file/,
  };
  const said = await Promise.all(Object.keys(refusals).map((name) => run("restore", name)));
  for (const [index, pattern] of Object.values(refusals).entries()) {
    // Of several at once all but one may find the lock taken; they are asked again alone.
    const answer = /is using the database/.test(said[index]?.err ?? "")
      ? await run("restore", Object.keys(refusals)[index] ?? "")
      : said[index];
    expect(answer?.code).toBe(1);
    expect(answer?.err).toMatch(pattern);
    expect(answer?.err.trim().split("\n").length).toBe(1);
  }
  expect(sha256(file)).toBe(before);
  expect(readdirSync(join(folder, "data")).filter((name) => name.startsWith("before-restore"))).toEqual([]);
}, 60_000);

/** The program's migrations without the newest, as the version before had them. */
function olderMigrations(): { older: string; newest: number } {
  const older = join(folder, "older");
  cpSync(join(ROOT, "db/migrations"), older, { recursive: true });
  const path = join(older, "meta/_journal.json");
  const journal = JSON.parse(readFileSync(path, "utf8")) as { entries: { when: number }[] };
  const newest = journal.entries.pop()?.when ?? 0;
  writeFileSync(path, JSON.stringify(journal));
  return { older, newest };
}

test("an older database is copied before it is changed; the copy restores", async () => {
  for (const end of ["", "-wal", "-shm"]) rmSync(file + end, { force: true });
  const { older, newest } = olderMigrations();
  openDatabase(file, { migrationsFolder: older }).close();
  openDatabase(file).close();
  const copies = readdirSync(join(folder, "data")).filter((name) =>
    name.startsWith(`springline.sqlite.before-${newest}-`),
  );
  expect(copies.length).toBe(1);
  const copy = join(folder, "data", copies[0] ?? "");
  expect(statSync(copy).mode & 0o777).toBe(0o600);
  expect(await run("restore", copy)).toMatchObject({ code: 0, err: "" });
  expect(sha256(file)).toBe(sha256(copy));
}, 60_000);

test("the only manager's way back in: a link beside a running server, on the record as the server's", async () => {
  const db = openDatabase(file);
  db.raw.exec(`
    insert into organization (id, name, slug, created_at) values ('studio', 'Slipway Strength', 'studio', 0);
    insert into user (id, name, email, created_at, updated_at) values ('u', 'Ann', 'ann@quay.example', 0, 0);
    insert into member (id, organization_id, user_id, role, created_at) values ('u', 'studio', 'u', 'manager', 0);`);
  // Still open, and so still holding the writer's lock.
  const said = await run("reset-password", "Ann@quay.example");
  expect(said).toMatchObject({ code: 0, err: "" });
  expect(said.out).toMatch(/^http:\/\/localhost:4310\/reset\/[\w-]{32}\n/);
  const event = db.raw.prepare("select actor_id as by, kind, subject from studio_event").get();
  expect(event).toEqual({ by: "server", kind: "reset-link", subject: "u" });
  const nobody = await run("reset-password", "bob@quay.example");
  expect(nobody).toMatchObject({
    code: 1,
    err: "Nobody in this studio has the address bob@quay.example. Check the address.\n",
  });
  db.close();
}, 60_000);
