/**
 * The server's own backups on a real disk: due, missed, tested, thinned out, broken off, refused for want of room. The thread, the
 * files and the database are the real ones; the clock is the test's.
 */

import { spawnSync } from "node:child_process";
import {
  copyFileSync,
  existsSync,
  mkdirSync,
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
import { runBackupJob } from "#server/backup/backup-job.ts";
import { type BackupRuns, createBackupRuns } from "#server/backup/backup-runs.ts";
import { backupSettingsSchema, saveBackupSettings } from "#server/backup/backup-settings.ts";
import { restoreBackup } from "#server/backup/restore-backup.ts";
import { sourceOf } from "#server/backup/server-source.ts";
import { installationId } from "#server/http/installation-id.ts";
import { listNotices } from "#server/notices/list-notices.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { bundleServer, ROOT } from "#tests/support/bundle-server.ts";
import { must, openStudio, type PlanStudio, ROOMS, START } from "#tests/support/plan-studio.ts";
import { tempDb } from "#tests/support/temp-db.ts";

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
let s: PlanStudio;
let runs: BackupRuns;
let folder: string;
let place: ReturnType<typeof tempDb>;
beforeEach(async () => {
  s = openStudio({ clock: START });
  place = tempDb();
  folder = join(place.folder, "backups");
  s.db.raw.prepare("insert into studio_setting values ('month', ?, 0)").run(JSON.stringify({ uid: "u", zone: "UTC" }));
  runs = createBackupRuns({ app: s.app });
});
afterEach(async () => {
  await runs.stop();
  await s.stop();
  place.remove();
});

const setUp = async (change: object = {}) => {
  const settings = {
    on: true,
    time: "03:30",
    folder,
    keep: { days: 2, weeks: 0, months: 0 },
    copyFolder: "",
    seen: 0,
    ...change,
  };
  return must(await saveBackupSettings(s.app, s.people.petra, backupSettingsSchema.parse(settings)));
};
const tars = () =>
  readdirSync(folder)
    .filter((name) => name.endsWith(".tar"))
    .sort();
const newPlan = (title: string) =>
  must(createPlan(s.app, s.people.jonas, { title, lengthSeconds: 600, roomId: ROOMS.harbour }));

test("the operator's story: every night for a week, then an empty machine, and every row is back", async () => {
  await setUp();
  // Begun at 09:00, so the first is due at half past three the next morning.
  await runs.look();
  expect(tars()).toEqual([]);
  for (let day = 0; day < 7; day++) {
    newPlan(`Class ${day}`);
    s.advance(DAY_MS);
    await runs.look();
    expect(runs.state().problem).toBeNull();
  }
  expect(tars().length).toBe(2);
  expect(readdirSync(folder)).toEqual(tars());
  const { last, kept, nextAt } = runs.state();
  expect(kept.map(({ name }) => name)).toEqual(tars().reverse());
  expect(new Date(nextAt ?? 0).toISOString()).toBe("2026-11-10T03:30:00.000Z");

  const empty = tempDb();
  const data = join(empty.folder, "data");
  const databaseFile = join(data, "springline.sqlite");
  const here = { dataDir: data, databaseFile, secretFile: join(data, "secret"), givenSecret: undefined };
  await restoreBackup(here, join(folder, last?.name ?? ""), new Date());
  expect(readFileSync(here.secretFile, "utf8")).toBe(s.app.env.secret);
  expect(statSync(here.secretFile).mode & 0o777).toBe(0o600);
  expect(rowsOf(databaseFile)).toEqual(rowsOf(s.db.file));
  empty.remove();
});

/** Every row of every table as text; but who wrote under which client id, which is forgotten, and how the backup itself went. */
function rowsOf(file: string): Record<string, unknown[]> {
  const raw = new Database(file, { readonly: true });
  const tables = raw
    .prepare<[], string>("select name from sqlite_master where type = 'table' and name not like 'sqlite_%'")
    .pluck()
    .all()
    .filter((table) => table !== "doc_client");
  const rows = tables.map((table) => {
    const where = table === "studio_setting" ? "where name <> 'backup-state'" : "";
    return [
      table,
      raw
        .prepare(`select * from "${table}" ${where}`)
        .all()
        .map((row) => JSON.stringify(row)),
    ] as const;
  });
  raw.close();
  return Object.fromEntries(rows);
}

test("one that was missed while the server was down is made at the start, once", async () => {
  await setUp();
  s.advance(20 * DAY_MS);
  const later = createBackupRuns({ app: s.app });
  await later.look();
  await later.look();
  expect(tars().length).toBe(1);
  // What became of it is known after another start.
  expect(createBackupRuns({ app: s.app }).state().last?.name).toBe(tars()[0]);
});

test("files that the schedule has not made stay, whatever they are called", async () => {
  await setUp({ keep: { days: 1, weeks: 0, months: 0 } });
  s.advance(DAY_MS);
  await runs.look();
  const [first = ""] = tars();
  const mark = /-s(\w{8})\.tar$/.exec(first)?.[1];
  const strange = [
    "springline-2026-01-01T033000Z-v0.1.0.tar",
    `springline-2026-01-01T033000Z-s${mark}.tar`,
    "springline-2026-01-01T033000Z-s00000000.tar",
    "letter.txt",
    first.replace(".tar", " (copy).tar"),
  ];
  for (const name of strange) writeFileSync(join(folder, name), "not the schedule's");
  // The file says another time than its name.
  const renamed = `springline-2026-01-02T033000Z-s${mark}.tar`;
  copyFileSync(join(folder, first), join(folder, renamed));
  s.advance(DAY_MS);
  await runs.look();
  expect(existsSync(join(folder, first))).toBe(false);
  expect(readdirSync(folder)).toEqual(expect.arrayContaining([...strange, renamed]));
  expect(runs.state().kept.length).toBe(1);
});

test("a folder that is gone: said, told to managers once, tried again later, and made good", async () => {
  await setUp();
  rmSync(folder, { recursive: true });
  s.advance(DAY_MS);
  await runs.look();
  const { problem } = runs.state();
  expect(problem?.says).toMatch(/^There is no folder .*Is its disk mounted\?/);
  expect(problem?.nextAt).toBe(s.app.now() + 10 * 60_000);
  await runs.look();
  s.advance(11 * 60_000);
  await runs.look();
  expect(runs.state().problem?.nextAt).toBe(s.app.now() + HOUR_MS);
  const told = must(listNotices(s.app, s.people.petra));
  expect(told.notices.map(({ sentence, path }) => [sentence.slice(0, 44), path])).toEqual([
    ["No backup could be made. There is no folder ", "/studio#backups"],
  ]);
  expect(must(listNotices(s.app, s.people.ines)).notices).toEqual([]);
  mkdirSync(folder);
  s.advance(HOUR_MS);
  await runs.look();
  expect(runs.state().problem).toBeNull();
  expect(tars().length).toBe(1);
});

const jobHere = () => ({
  ...{ place: sourceOf(s.app), folder: { path: folder, make: true, apart: false }, zone: "UTC", at: s.app.now() },
  ...{ keep: { days: 7, weeks: 4, months: 12 }, program: "0.1.0", installation: installationId(s.app.env.secret) },
});

test("without room it is not begun, and says how much it needs; nothing is written", async () => {
  const sparse = join(place.folder, "large.sqlite");
  writeFileSync(sparse, "");
  // Of eight terabytes, without taking them.
  truncateSync(sparse, 8 * 1024 ** 4);
  const job = jobHere();
  const end = await runBackupJob({ ...job, place: { ...job.place, databaseFile: sparse } });
  expect(end.problem).toMatch(
    /^There are [\d.]+ [MG]B free on the disk of .*; a backup needs 16384\.1 GB\. Free some space/,
  );
  expect(readdirSync(folder)).toEqual([]);
});

const canMount = spawnSync("unshare", ["-rm", "mount", "-t", "tmpfs", "tmpfs", tmpdir()]).status === 0;
test.skipIf(!canMount)(
  "a disk that fills up meanwhile: said, no half file is left, and nobody's process ends",
  async () => {
    const disk = join(place.folder, "disk");
    mkdirSync(disk);
    const job = { ...jobHere(), folder: { path: disk, make: false, apart: false } };
    const program = join(ROOT, "dist-tests/filling");
    await bundleServer({ filling: "tests/support/fill-while-backing-up.ts" }, program);
    const child = [join(program, "filling.js"), JSON.stringify(job)];
    const said = spawnSync(
      "unshare",
      ["-rm", "sh", "-c", `mount -t tmpfs -o size=90m tmpfs "$0" && exec "$@"`, disk, process.execPath, ...child],
      { cwd: ROOT, encoding: "utf8" },
    );
    expect(said.stderr).toBe("");
    expect(JSON.parse(said.stdout)).toEqual({
      problem: `The disk of ${disk} is full. Free some space there, or name a folder on another disk.`,
      left: ["filler"],
    });
  },
);

test("what a killed run left is removed by the next", async () => {
  await setUp();
  const mark = installationId(s.app.env.secret).slice(0, 8);
  mkdirSync(join(folder, `.springline-${mark}-killed`));
  writeFileSync(join(folder, `.springline-${mark}-killed`, "springline.sqlite"), "half");
  mkdirSync(join(folder, ".backup-of-a-person"));
  expect((await runBackupJob(jobHere())).problem).toBeNull();
  expect(readdirSync(folder)).toEqual([".backup-of-a-person", ...tars()]);
});

test("a manager's own is made at once; a second press changes nothing; a damaged database is left alone", async () => {
  await setUp({ on: false });
  runs.begin();
  const since = runs.state().runningSince;
  expect(since).not.toBeNull();
  runs.begin();
  await runs.look();
  expect(runs.state()).toMatchObject({ runningSince: null, problem: null, nextAt: null });
  expect(tars().length).toBe(1);
  s.db.damage.found("for a test");
  runs.begin();
  expect(runs.state().runningSince).toBeNull();
});
