/** The manager's health report: what each line says when all is well, and when something is not. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { GET } from "#app/api/studio/health/route.ts";
import { backupSettingsSchema, saveBackupSettings, showBackupSettings } from "#server/backup/backup-settings.ts";
import type { BackupState, Care } from "#server/context/care.ts";
import { setSpringline } from "#server/context/springline.ts";
import { watchClock } from "#server/health/clock-watch.ts";
import { folderFinding } from "#server/health/folder-finding.ts";
import { type HealthReport, readHealthReport, wrongNow } from "#server/health/health-report.ts";
import { idleCare } from "#tests/support/idle-care.ts";
import { must, openStudio, type PlanStudio, START, type Who } from "#tests/support/plan-studio.ts";
import { signInAll } from "#tests/support/sign-in.ts";

const HOUR_MS = 3_600_000;
let s: PlanStudio;
let folder: string;
beforeEach(async () => {
  s = openStudio({ clock: Date.now() });
  folder = mkdtempSync(join(tmpdir(), "springline-health-"));
  s.db.raw.prepare("insert into studio_setting values ('month', ?, 0)").run(JSON.stringify({ zone: "Europe/Lisbon" }));
  const settings = {
    on: true,
    time: "03:30",
    folder,
    keep: { days: 7, weeks: 4, months: 12 },
    copyFolder: "",
    seen: 0,
  };
  must(await saveBackupSettings(s.app, s.people.petra, backupSettingsSchema.parse(settings)));
});
afterEach(async () => {
  setSpringline(undefined);
  rmSync(folder, { recursive: true, force: true });
  await s.stop();
});

const MADE = { name: "b.tar", at: START, bytes: 5_000_000, folder: "/mnt", tookMs: 100 };
const backups = (state: Partial<BackupState>): Care["backups"] => ({
  begin: () => undefined,
  state: () => ({ ...idleCare.backups.state(), ...state }),
});
async function report(care: Partial<Care> = {}): Promise<HealthReport> {
  s.advance(5_000);
  return must(await readHealthReport({ ...s.app, care: { ...idleCare, ...care } }, s.people.petra));
}
const lineOf = ({ lines }: HealthReport, what: string) => lines.find((line) => line.what === what);

test("the backups' time is named, and that it is the studio's own until somebody sets one", async () => {
  const due = backups({ last: { ...MADE, at: s.app.now() }, nextAt: s.app.now() + HOUR_MS });
  expect(lineOf(await report({ backups: due }), "backups")?.found).toMatch(
    /, as every day at 03:30; 0 backups kept\.$/,
  );
  const settings = { on: true, time: "", folder, keep: { days: 7, weeks: 4, months: 12 }, copyFolder: "" };
  const { seen } = must(showBackupSettings(s.app, s.people.petra));
  must(await saveBackupSettings(s.app, s.people.petra, backupSettingsSchema.parse({ ...settings, seen })));
  s.advance(HOUR_MS);
  expect(lineOf(await report({ backups: due }), "backups")?.found).toMatch(
    /, as every day at 0[34]:\d\d, this studio’s own time until one is set under Studio, Backups; /,
  );
});

test("says of a sound server what it found, and that nothing needs care", async () => {
  const last = { ...MADE, at: s.app.now() - HOUR_MS };
  const sound = await report({ lastLook: () => s.app.now(), backups: backups({ last, kept: [last] }) });
  expect(sound.lines.filter(({ is }) => is === "wrong").map(({ what }) => what)).toEqual([]);
  expect(lineOf(sound, "database")?.found).toMatch(/^[\d.]+ MB; every page was checked .* and is undamaged\.$/);
  expect(lineOf(sound, "backups")?.found).toMatch(/passed its test and has 4\.8 MB; 1 backup kept\.$/);
  expect(lineOf(sound, "clock")?.found).toContain("in the studio (Europe/Lisbon)");
  expect(lineOf(sound, "connections")?.found).toMatch(/^0 sockets open to 0 plans or months\.$/);
  expect(lineOf(sound, "program")?.found).toMatch(/^version \d+\.\d+\.\d+, on Node /);
  // The test's folder is on the disk of its data.
  expect(lineOf(sound, "backup folder")).toMatchObject({ is: "unsure", found: expect.stringContaining("same disk") });
});

describe("says what is wrong and what to do", () => {
  test.each([
    [
      "a failed one",
      { problem: { at: START, says: "The disk is full.", nextAt: START + HOUR_MS } },
      /is full\. None has/,
    ],
    ["an old one", { last: { ...MADE, at: START - 30 * 24 * HOUR_MS } }, /^the last was made/],
  ])("of backups: %s", async (_, state, says) => {
    const line = lineOf(await report({ backups: backups(state) }), "backups");
    expect(line).toMatchObject({ is: "wrong", found: expect.stringMatching(says), todo: expect.any(String) });
  });

  test("of a damaged database, of a clock that was set, of a folder that is gone", async () => {
    rmSync(folder, { recursive: true });
    s.db.damage.found("for a test");
    const said = await report({ clockJumps: () => [{ at: s.app.now(), byMs: -7_200_000 }] });
    expect(lineOf(said, "database")?.todo).toContain("npm run -s restore");
    expect(lineOf(said, "clock")).toMatchObject({ is: "wrong", found: expect.stringContaining("jumped 120 min back") });
    expect(lineOf(said, "backup folder")).toMatchObject({ is: "wrong", found: expect.stringContaining("no folder") });
    s.advance(10_000);
    expect(await wrongNow(s.app, s.people.petra)).toBe("database, backup folder");
    expect(await wrongNow(s.app, s.people.ines)).toBeNull();
  });
});

test("a folder that is made with the first backup is not missing", async () => {
  const path = join(folder, "not yet");
  expect(await folderFinding("backup folder", { path, make: true, apart: false }, folder)).toMatchObject({
    is: "right",
  });
});

test("the clock's jumps are seen, forward and back; the time that passes is none", () => {
  let [wall, steady] = [1_000_000, 0];
  const watch = watchClock({ now: () => wall, steady: () => steady });
  const pass = (ms: number, jump = 0) => {
    steady += ms;
    wall += ms + jump;
    watch.look();
  };
  pass(10_000);
  pass(600_000, 1_000);
  expect(watch.jumps()).toEqual([]);
  pass(10_000, 3_600_000);
  pass(10_000, -60_000);
  watch.stop();
  expect(watch.jumps().map(({ byMs }) => byMs)).toEqual([-60_000, 3_600_000]);
});

test("nobody but a manager is answered", async () => {
  setSpringline(s.app);
  const cookies = await signInAll(s, ["petra", "ines", "marta", "jonas", "sam"]);
  const status = async (who: Who | null) => {
    const cookie = who && cookies.get(who);
    const headers = new Headers(cookie ? { cookie } : {});
    return (await GET(new Request(`${s.app.env.origin}/api/studio/health`, { headers }))).status;
  };
  expect(await status(null)).toBe(401);
  for (const who of ["ines", "marta", "jonas", "sam"] as const) {
    expect(await status(who)).toBe(403);
    expect(await readHealthReport(s.app, s.people[who])).toMatchObject({ error: { status: 403 } });
  }
  expect(await status("petra")).toBe(200);
});
