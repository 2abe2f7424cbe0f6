/** When and where backups are made: who may say so, and what is refused in words. */
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { GET, PUT } from "#app/api/studio/backups/route.ts";
import { ownBackupTime } from "#lib/backups/own-time.ts";
import {
  backupSettingsSchema,
  readBackupSettings,
  saveBackupSettings,
  showBackupSettings,
} from "#server/backup/backup-settings.ts";
import { readyFolder } from "#server/backup/folder.ts";
import { setSpringline } from "#server/context/springline.ts";
import { installationId } from "#server/http/installation-id.ts";
import { must, openStudio, type PlanStudio, type Who } from "#tests/support/plan-studio.ts";
import { signInAll } from "#tests/support/sign-in.ts";

let s: PlanStudio;
let other: string;
beforeEach(() => {
  s = openStudio({ clock: Date.now() });
  other = mkdtempSync(join(tmpdir(), "springline-other-"));
});
afterEach(async () => {
  setSpringline(undefined);
  chmodSync(other, 0o700);
  rmSync(other, { recursive: true, force: true });
  await s.stop();
});

const GOOD = { on: true, time: "04:15", keep: { days: 3, weeks: 2, months: 1 }, copyFolder: "", seen: 0 };
const save = (change: object = {}, who: Who = "petra") =>
  saveBackupSettings(s.app, s.people[who], backupSettingsSchema.parse({ ...GOOD, folder: other, ...change }));

test("without a word from anybody they are on, beside the data; in the demo they are off", () => {
  const usual = join(s.app.env.dataDir, "../backups");
  expect(readBackupSettings(s.app)).toEqual({
    ...{ on: true, time: ownBackupTime(installationId(s.app.env.secret)), timeIsOwn: true },
    keep: { days: 7, weeks: 4, months: 12 },
    ...{ folder: { path: usual, make: true, apart: false }, copyFolder: null },
  });
  const demo = { db: s.db, env: { ...s.app.env, mode: "demo" as const } };
  expect(readBackupSettings(demo).on).toBe(false);
});

test("what a manager sets is kept, and the record says who", async () => {
  const shown = must(await save());
  expect(shown).toMatchObject({ time: "04:15", folder: other, keep: GOOD.keep });
  expect(readBackupSettings(s.app).folder).toEqual({ path: other, make: false, apart: false });
  expect(readdirSync(other)).toEqual([]);
  const rows = s.db.raw.prepare("select actor_id as by, kind from record where kind = 'backup-settings'").all();
  expect(rows).toEqual([{ by: "petra", kind: "backup-settings" }]);
  must(await save({ folder: join(other, "made for it"), seen: shown.seen }));
  expect(existsSync(join(other, "made for it"))).toBe(true);
});

test("a time that was set is kept to the minute; emptied, it is the studio's own again", async () => {
  const set = must(await save({ time: "03:30" }));
  expect(readBackupSettings(s.app)).toMatchObject({ time: "03:30", timeIsOwn: false });
  const own = must(await save({ time: "", seen: set.seen }));
  expect(own).toMatchObject({ time: "", ownTime: expect.stringMatching(/^0[34]:\d\d$/) });
  expect(readBackupSettings(s.app)).toMatchObject({ time: own.ownTime, timeIsOwn: true });
  // As settings were stored before there was a time of one's own.
  s.db.raw
    .prepare("update studio_setting set data_json = json_set(data_json, '$.time', '03:30') where name = 'backups'")
    .run();
  expect(readBackupSettings(s.app)).toMatchObject({ time: "03:30", timeIsOwn: false });
});

test("of two managers who change it, the second is told", async () => {
  const { seen } = must(await save());
  must(await save({ time: "05:00", seen }));
  expect(await save({ time: "06:00", seen })).toMatchObject({ error: { code: "changed-meanwhile", status: 409 } });
  expect(readBackupSettings(s.app).time).toBe("05:00");
});

describe("a folder", () => {
  test("that is a file, in the data folder, or under a file is refused in words, and nothing is saved", async () => {
    const file = join(other, "letter.txt");
    writeFileSync(file, "Dear studio");
    for (const [folder, says] of [
      [file, /is a file, not a folder/],
      [join(file, "below"), /cannot be made/],
      [s.app.env.dataDir, /outside the data folder/],
      [join(s.app.env.dataDir, "backups"), /outside the data folder/],
      ["/proc/backups", /may not write|cannot be made/],
    ] as const) {
      const refused = await save({ folder });
      expect(refused, folder).toMatchObject({ error: { status: 422, message: expect.stringMatching(says) } });
    }
    expect(must(showBackupSettings(s.app, s.people.petra)).seen).toBe(0);
  });

  // The superuser may write everywhere.
  test.skipIf(process.getuid?.() === 0)("that the account may not write into is refused in words", async () => {
    chmodSync(other, 0o500);
    expect(await save()).toMatchObject({ error: { message: expect.stringContaining("may not write into") } });
  });

  test("whose disk is not mounted any more is not written into: its mount point is on the data's disk", async () => {
    mkdirSync(join(other, "mount"));
    const folder = { path: join(other, "mount"), make: false, apart: true };
    await expect(readyFolder(folder, s.app.env.dataDir)).rejects.toThrow(/that disk is not mounted/);
    const gone = { path: join(other, "not there"), make: false, apart: true };
    await expect(readyFolder(gone, s.app.env.dataDir)).rejects.toThrow(/Is its disk mounted\?/);
  });
});

test.each([
  [{ time: "24:00" }, "hours and minutes"],
  [{ folder: "backups" }, "whole path"],
  [{ folder: "/mnt/a\nb" }, "one line"],
  [{ keep: { days: 0, weeks: 4, months: 12 } }, "at least 1"],
  [{ keep: { days: 7, weeks: -1, months: 12 } }, "at least 0"],
  [{ keep: { days: 7.5, weeks: 1, months: 12 } }, "whole number"],
])("%j is refused with a sentence", (change, says) => {
  const parsed = backupSettingsSchema.safeParse({ ...GOOD, folder: "", ...change });
  expect(parsed.error?.issues[0]?.message).toContain(says);
});

test("over HTTP it is the manager's alone", async () => {
  setSpringline(s.app);
  const cookies = await signInAll(s, ["petra", "ines", "marta", "jonas", "sam"]);
  const call = (method: "GET" | "PUT", who: Who | null) => {
    const headers = new Headers({ origin: s.app.env.origin, "content-type": "application/json" });
    const cookie = who && cookies.get(who);
    if (cookie) headers.set("cookie", cookie);
    const body = method === "PUT" ? { body: JSON.stringify({ ...GOOD, folder: other }) } : {};
    const request = new Request(`${s.app.env.origin}/api/studio/backups`, { method, headers, ...body });
    return method === "GET" ? GET(request) : PUT(request);
  };
  for (const who of [null, "ines", "marta", "jonas", "sam"] as const) {
    expect((await call("GET", who)).status).toBe(who === null ? 401 : 403);
    expect((await call("PUT", who)).status).toBe(who === null ? 401 : 403);
    expect(await saveBackupSettings(s.app, who && s.people[who], { ...GOOD, folder: other })).toMatchObject({
      error: { status: 403 },
    });
  }
  expect((await call("GET", "petra")).status).toBe(200);
  expect((await call("PUT", "petra")).status).toBe(200);
});
