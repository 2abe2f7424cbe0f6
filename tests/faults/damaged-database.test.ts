/** A database file with pages that were really overwritten: the start refuses it, a running server says so, nobody is misled. */

import { closeSync, copyFileSync, openSync, readFileSync, renameSync, rmSync, writeSync } from "node:fs";
import Database from "better-sqlite3";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import * as authRoute from "#app/api/auth/[...all]/route.ts";
import { POST as firstRun } from "#app/api/first-run/route.ts";
import { GET } from "#app/api/health/route.ts";
import { openDatabase } from "#db/connection.ts";
import { watchDamage } from "#db/file/damage.ts";
import { DatabaseRefused } from "#db/file/migrations.ts";
import { askForLook, quickCheck, writeProbe } from "#db/file/soundness.ts";
import { setSpringline } from "#server/context/springline.ts";
import { type LookIntervals, watchForDamage } from "#server/health/damage-watch.ts";
import { type TempDb, tempDb } from "#tests/support/temp-db.ts";
import { type Harness, outcome, PASSWORD, request, startHarness } from "#tests/unit/auth-harness.ts";

let temp: TempDb;
beforeEach(() => {
  temp = tempDb();
  temp.open().close();
});
afterEach(() => {
  vi.restoreAllMocks();
  temp.remove();
});

/** Overwrites the pages that hold the schema's indexes and all after them, and leaves the header: it still opens. */
function damage(file: string): void {
  const raw = new Database(file, { readonly: true });
  const size = Number(raw.pragma("page_size", { simple: true }));
  const root = raw.prepare<[], number>("select max(rootpage) from sqlite_master").pluck().get() ?? 0;
  raw.close();
  const handle = openSync(file, "r+");
  writeSync(handle, Buffer.alloc(size, 0x5a), 0, size, (root - 1) * size);
  closeSync(handle);
}

test("a damaged file is refused at the start with a sentence, and not one byte of it is changed", async () => {
  expect(await quickCheck(temp.file)).toBeUndefined();
  damage(temp.file);
  expect(await quickCheck(temp.file)).toBeTruthy();
  const before = readFileSync(temp.file);
  expect(() => openDatabase(temp.file)).toThrow(DatabaseRefused);
  expect(() => openDatabase(temp.file)).toThrow(/is damaged \(.*\)\. It was not opened.*npm run -s restore/);
  expect(readFileSync(temp.file).equals(before)).toBe(true);
});

test("a file that is no database at all is refused the same way", () => {
  const handle = openSync(temp.file, "r+");
  writeSync(handle, Buffer.alloc(4096, "no database "), 0, 4096, 0);
  closeSync(handle);
  expect(() => openDatabase(temp.file)).toThrow(/is damaged/);
});

interface Health {
  readonly status: number;
  readonly problems: readonly string[];
}
async function health(): Promise<Health> {
  const answer = await GET(request("/api/health"));
  return { status: answer.status, problems: (await answer.json()).problems };
}

async function withApp(run: (h: Harness) => Promise<void>): Promise<void> {
  const h = startHarness();
  try {
    await run(h);
  } finally {
    h.stop();
  }
}

const DAMAGED = "The database is damaged. Stop the server and restore the latest backup.";
const silentLog = () => ({ error: vi.fn(), warn: vi.fn() });
const STUDIO = { studio: "Slipway Strength", name: "Ann", email: "ann@quay.example", password: PASSWORD };

test("damage that comes while the server runs: the next look finds it, health says what to do, nothing more is written", () =>
  withApp(async (h) => {
    const log = silentLog();
    h.db.raw.pragma("wal_checkpoint(truncate)");
    const soundness = watchForDamage({ db: h.db, log });
    await soundness.look();
    expect(await health()).toEqual({ status: 200, problems: [] });
    h.db.raw.pragma("wal_checkpoint(truncate)");
    damage(h.db.file);
    await soundness.look();
    await soundness.look();
    soundness.stop();
    expect(await health()).toEqual({ status: 503, problems: [DAMAGED] });
    expect(log.error).toHaveBeenCalledOnce();
    expect(() => writeProbe(h.db.raw)).toThrow();
    const refused = await firstRun(request("/api/first-run", { method: "POST", body: STUDIO }));
    expect(refused.status).toBe(503);
    expect((await refused.json()).error.message).toMatch(
      /is damaged\. Nothing was changed, .* until a backup is restored/,
    );
    const signIn = await authRoute.POST(request("/api/auth/sign-in/email", { method: "POST", body: STUDIO }));
    expect(await outcome(signIn)).toBe("503 damaged");
  }));

/** Opened before it is damaged, as a running server has it, with nothing of it kept in memory. */
function openRaw(): Database.Database {
  const raw = new Database(temp.file);
  raw.pragma("cache_size = 0");
  return raw;
}

test("an error by which SQLite says damage makes a look at once, whoever met it", async () => {
  damage(temp.file);
  const raw = openRaw();
  const known = watchDamage(raw);
  const soundness = watchForDamage({ db: { file: temp.file, damage: known }, log: silentLog() });
  const found = new Promise<void>((told) => known.onFound(told));
  const tables = raw.prepare<[], string>("select name from sqlite_master where type = 'table'").pluck().all();
  const met = tables.filter((name) => isDamaged(raw, `select count(*), * from "${name}" order by 1, rowid`));
  const indexes = met.length > 0 || isDamaged(raw, "reindex");
  expect(indexes).toBe(true);
  await found;
  soundness.stop();
  expect(known.known).toBeTruthy();
  expect(() => raw.exec("create table more (a)")).toThrow(/readonly/);
  raw.close();
});

function isDamaged(raw: Database.Database, sql: string): boolean {
  try {
    const statement = raw.prepare(sql);
    if (statement.reader) statement.all();
    else statement.run();
    return false;
  } catch (error) {
    return error instanceof Error && "code" in error && /^SQLITE_CORRUPT/.test(String(error.code));
  }
}

test("a small file is looked through every minute, a large one seldom, either at once when a command asks", () =>
  withApp(async (h) => {
    h.db.raw.pragma("wal_checkpoint(truncate)");
    const watch = (pace: Partial<LookIntervals>) => watchForDamage({ db: h.db, log: silentLog(), pace });
    const never = watch({ smallMs: 0, largeBytes: 0 });
    damage(h.db.file);
    await never.glance();
    expect(h.db.damage.known).toBeNull();
    askForLook(h.db.file);
    await never.glance();
    expect(h.db.damage.known).toBeTruthy();
    never.stop();
  }));

test("a small file is due after its minute", () =>
  withApp(async (h) => {
    h.db.raw.pragma("wal_checkpoint(truncate)");
    damage(h.db.file);
    const soundness = watchForDamage({ db: h.db, log: silentLog(), pace: { smallMs: 0 } });
    await soundness.glance();
    soundness.stop();
    expect(h.db.damage.known).toBeTruthy();
  }));

test.each([
  ["another file in its place", (file: string) => renameSync(`${file}.other`, file)],
  ["its log taken away", (file: string) => rmSync(`${file}-wal`)],
])("%s is damage: what is written would be gone at the end", (_what, act) =>
  withApp(async (h) => {
    writeProbe(h.db.raw);
    const soundness = watchForDamage({ db: h.db, log: silentLog() });
    copyFileSync(h.db.file, `${h.db.file}.other`);
    await soundness.glance();
    expect(h.db.damage.known).toBeNull();
    act(h.db.file);
    await soundness.glance();
    soundness.stop();
    expect(await health()).toEqual({ status: 503, problems: [DAMAGED] });
  }),
);

test("a look in a thread of its own leaves the main thread free", async () => {
  let turns = 0;
  const turning = setInterval(() => turns++, 0);
  await quickCheck(temp.file);
  clearInterval(turning);
  expect(turns).toBeGreaterThan(0);
});

test("a database that can be read and not written is no healthy one; the probe is made once in ten seconds", () =>
  withApp(async (h) => {
    const version = () => Number(h.db.raw.pragma("user_version", { simple: true }));
    expect((await health()).status).toBe(200);
    const after = version();
    expect((await health()).status).toBe(200);
    expect(version()).toBe(after);
    h.db.raw.pragma("query_only = 1");
    expect(() => writeProbe(h.db.raw)).toThrow();
    h.advance(11_000);
    expect(await health()).toEqual({
      status: 503,
      problems: ["The database cannot be written. The server's log says why."],
    });
  }));

test("a data folder that is gone is said", () =>
  withApp(async (h) => {
    setSpringline({ ...h.app, env: { ...h.app.env, dataDir: `${h.app.env.dataDir}/not-there` } });
    expect((await health()).problems).toEqual(["The data folder cannot be examined. The server's log says why."]);
  }));
