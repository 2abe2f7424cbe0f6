/**
 * The copy on another disk, as an owner needs it: kill -9 in a burst of edits, the data folder is gone, the copy is restored on an
 * empty machine. What is missing is no older than the pace and the making of a copy. One second in `npm test`; the program's own
 * half minute in a long run.
 */
import { spawn } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import Database from "better-sqlite3";
import { afterEach, beforeEach, expect, test } from "vitest";
import { openDatabase } from "#db/connection.ts";
import { writeSetting } from "#db/repos/setting-repo.ts";
import { runCopyJob } from "#server/backup/copy-job.ts";
import { createCopyRuns } from "#server/backup/copy-runs.ts";
import { restoreBackup } from "#server/backup/restore-backup.ts";
import { sourceOf } from "#server/backup/server-source.ts";
import { installationId } from "#server/http/installation-id.ts";
import { listNotices } from "#server/notices/list-notices.ts";
import { bundleServer, ROOT } from "#tests/support/bundle-server.ts";
import { eventually } from "#tests/support/eventually.ts";
import { often } from "#tests/support/long.ts";
import { must, openStudio } from "#tests/support/plan-studio.ts";
import { type TempDb, tempDb } from "#tests/support/temp-db.ts";

const PACE_MS = often(1_000, 30_000);
let place: TempDb;
let copies: string;
const ends: (() => unknown)[] = [];
beforeEach(() => {
  place = tempDb();
  copies = join(place.folder, "copies");
  mkdirSync(copies);
});
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
  place.remove();
});
const copyNames = () =>
  readdirSync(copies)
    .filter((name) => name.endsWith(".sqlite"))
    .sort();
const placeIn = (dataDir: string) => ({
  ...{ dataDir, databaseFile: join(dataDir, "springline.sqlite"), secretFile: join(dataDir, "secret") },
  givenSecret: undefined,
});

test("kill -9 in a burst of edits, the data folder gone: the copy has all but the last moments", async () => {
  const data = join(place.folder, "data");
  mkdirSync(data);
  const program = join(ROOT, "dist-tests/copying");
  await bundleServer(
    { "copying-server": "tests/support/copying-server.ts", "copy-worker": "server/backup/copy-worker.ts" },
    program,
  );
  const args = [join(program, "copying-server.js"), data, copies, String(PACE_MS)];
  const child = spawn(process.execPath, args, { cwd: ROOT, stdio: ["ignore", "pipe", "inherit"] });
  ends.push(() => child.kill("SIGKILL"));
  const commits: { n: number; at: number }[] = [];
  let said = "";
  child.stdout.on("data", (chunk: Buffer) => {
    const lines = `${said}${chunk.toString()}`.split("\n");
    said = lines.pop() ?? "";
    for (const line of lines) {
      const [n = "", at = ""] = line.split(" ");
      commits.push({ n: Number(n), at: Number(at) });
    }
  });
  const seen = new Set<string>();
  await eventually(
    "three copies were made",
    () => {
      for (const name of copyNames()) seen.add(name);
      return seen.size >= 3;
    },
    200_000,
  );
  // Shortly before the next copy is due, when most is missing.
  const third = commits.at(-1)?.at ?? 0;
  await eventually("most of the pace has passed", () => (commits.at(-1)?.at ?? 0) > third + 0.9 * PACE_MS, 60_000);
  child.kill("SIGKILL");
  await eventually("it is dead", () => child.signalCode === "SIGKILL");
  const secret = readFileSync(join(data, "secret"), "utf8");
  rmSync(data, { recursive: true });

  expect(copyNames().length).toBeLessThanOrEqual(3);
  const empty = placeIn(join(place.folder, "empty"));
  await restoreBackup(empty, join(copies, copyNames().at(-1) ?? ""), new Date());
  expect(readFileSync(empty.secretFile, "utf8")).toBe(secret);
  expect(statSync(empty.secretFile).mode & 0o777).toBe(0o600);
  openDatabase(empty.databaseFile).close();
  const raw = new Database(empty.databaseFile, { readonly: true });
  const there = new Set(raw.prepare<[], string>("select name from document").pluck().all());
  raw.close();
  const missing = commits.filter(({ n }) => !there.has(`plan/${n}`));
  const last = commits.at(-1)?.at ?? 0;
  const lostMs = last - (missing[0]?.at ?? last);
  // What is there has no gap: everything before the first that is missing.
  expect(commits.slice(0, commits.length - missing.length).every(({ n }) => there.has(`plan/${n}`))).toBe(true);
  expect(commits.length).toBeGreaterThan(100);
  expect(missing.length).toBeGreaterThan(0);
  expect(lostMs, `${missing.length} of ${commits.length} commits`).toBeLessThan(PACE_MS + 20_000);
  if (PACE_MS === 30_000) expect(lostMs).toBeLessThan(60_000);
}, 240_000);

async function studioWithCopies() {
  const s = openStudio();
  ends.push(() => s.stop());
  const keep = { days: 1, weeks: 0, months: 0 };
  const data = {
    on: false,
    time: "03:30",
    keep,
    folder: null,
    folderApart: false,
    copyFolder: copies,
    copyApart: false,
  };
  writeSetting(s.db, "backups", { data, updatedAt: 1 });
  const runs = createCopyRuns({ app: s.app });
  ends.push(() => runs.stop());
  return { s, runs };
}
const change = (s: { db: { raw: Database.Database } }, name: string) =>
  s.db.raw.prepare("insert into document (name, generation, created_at) values (?, 'g', 0)").run(name);

test("a copy is made when something has changed and not before its time; the last two are kept", async () => {
  const { s, runs } = await studioWithCopies();
  await runs.look();
  expect(copyNames().length).toBe(1);
  s.advance(3_600_000);
  await runs.look();
  expect(copyNames().length).toBe(1);
  expect(runs.state().changedAt).toBeNull();
  change(s, "plan/one");
  await runs.look();
  change(s, "plan/two");
  s.advance(1_000);
  await runs.look();
  expect(copyNames().length).toBe(2);
  expect(runs.state().changedAt).not.toBeNull();
  s.advance(3_600_000);
  await runs.look();
  expect(copyNames().length).toBe(2);
  expect(runs.state()).toMatchObject({ changedAt: null, problem: null });
  expect(readdirSync(copies).filter((name) => name.startsWith("."))).toEqual([]);
});

test("a copy that takes long is made less often: a twentieth of the time at most", async () => {
  const { s } = await studioWithCopies();
  const made = { name: "c", at: 0, bytes: 1 };
  const slow = () => ({
    end: Promise.resolve({ made, problem: null, tookMs: 4_000 }),
    stop: async () => undefined,
  });
  const runs = createCopyRuns({ app: s.app, paceMs: 10, thread: slow });
  await runs.look();
  expect(runs.state().paceMs).toBe(80_000);
});

test("a folder that is gone: said, told after the third time, and made good; a damaged copy takes no good one's place", async () => {
  const { s, runs } = await studioWithCopies();
  rmSync(copies, { recursive: true });
  for (let n = 0; n < 4; n++) {
    await runs.look();
    s.advance(61_000);
  }
  expect(runs.state().problem?.says).toMatch(/no folder/);
  expect(must(listNotices(s.app, s.people.petra)).notices.length).toBe(1);
  mkdirSync(copies);
  await runs.look();
  expect(runs.state().problem).toBeNull();
  const before = copyNames();
  const bad = join(place.folder, "bad.sqlite");
  writeFileSync(bad, readFileSync(join(copies, before[0] ?? "")).fill(0x5a, 8192));
  const job = { folder: { path: copies, make: false, apart: false }, installation: installationId(s.app.env.secret) };
  const end = await runCopyJob({ ...job, place: { ...sourceOf(s.app), databaseFile: bad }, at: s.app.now() + 5_000 });
  expect(end.made).toBeNull();
  expect(copyNames()).toEqual(before);
  expect(existsSync(join(copies, copyNames()[0] ?? ""))).toBe(true);
});
