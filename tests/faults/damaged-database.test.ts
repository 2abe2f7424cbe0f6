/** A database file with pages that were really overwritten: the start refuses it, a running server says so, nobody is misled. */
import { closeSync, openSync, readFileSync, writeSync } from "node:fs";
import Database from "better-sqlite3";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { GET } from "#app/api/health/route.ts";
import { DatabaseRefused, openDatabase } from "#db/connection.ts";
import { quickCheck, writeProbe } from "#db/soundness.ts";
import { watchSoundness } from "#server/http/soundness.ts";
import { setSpringline } from "#server/springline.ts";
import { type TempDb, tempDb } from "#tests/support/temp-db.ts";
import { type Harness, request, startHarness } from "#tests/unit/auth-harness.ts";

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

test("damage that comes while the server runs: the next look finds it, health answers 503 and says what to do", () =>
  withApp(async (h) => {
    const log = { error: vi.fn(), warn: vi.fn() };
    h.db.raw.pragma("wal_checkpoint(truncate)");
    const soundness = watchSoundness({ file: h.db.file, log });
    setSpringline({ ...h.app, soundness });
    await soundness.look();
    expect(await health()).toEqual({ status: 200, problems: [] });
    h.db.raw.pragma("wal_checkpoint(truncate)");
    damage(h.db.file);
    await soundness.look();
    soundness.stop();
    expect(await health()).toEqual({
      status: 503,
      problems: ["The database is damaged. Stop the server and restore the latest backup."],
    });
    expect(log.error).toHaveBeenCalledOnce();
  }));

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
    expect(() => writeProbe(h.db)).toThrow();
    h.advance(11_000);
    expect(await health()).toEqual({
      status: 503,
      problems: ["The database cannot be written; the server's log says why."],
    });
  }));

test("a data folder that is gone is said", () =>
  withApp(async (h) => {
    setSpringline({ ...h.app, env: { ...h.app.env, dataDir: `${h.app.env.dataDir}/not-there` } });
    expect((await health()).problems).toEqual(["The data folder cannot be looked at; the server's log says why."]);
  }));
