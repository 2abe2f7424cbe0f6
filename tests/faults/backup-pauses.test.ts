/**
 * Nobody waits for a backup: while a large database is copied, packed, restored and compared on a thread, this thread answers the
 * health check and commits what is written. 20 MB; 200 MB in a long run.
 */
import { statSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { GET } from "#app/api/health/route.ts";
import { insertStudio } from "#db/repos/studio-repo.ts";
import { createBackupRuns } from "#server/backup/backup-runs.ts";
import { backupSettingsSchema, saveBackupSettings } from "#server/backup/backup-settings.ts";
import { often } from "#tests/support/long.ts";
import { must } from "#tests/support/plan-studio.ts";
import { type TempDb, tempDb } from "#tests/support/temp-db.ts";
import { type Harness, request, startHarness } from "#tests/unit/auth-harness.ts";

const MB = 1024 * 1024;
const SIZE = often(20, 200) * MB;
const PETRA = { kind: "person", id: "petra", roles: ["manager"] } as const;
let h: Harness;
let place: TempDb;
beforeEach(() => {
  h = startHarness();
  place = tempDb();
  insertStudio(h.db, { name: "Tholepin Strength", town: "Port Ellery", soleAuthorMaySign: false, at: Date.now() });
});
afterEach(() => {
  place.remove();
  h.stop();
});

function fill(): void {
  const { raw } = h.db;
  raw.prepare("insert into document (name, generation, created_at) values ('plan/large', 'g', 0)").run();
  const add = raw.prepare(
    "insert into doc_update (name, bytes, actor_id, at) values ('plan/large', randomblob(20000), 'a', 0)",
  );
  const some = raw.transaction(() => {
    for (let n = 0; n < 250; n++) add.run();
  });
  while (statSync(h.db.file).size < SIZE) {
    some();
    raw.pragma("wal_checkpoint(truncate)");
  }
}

/** Answers and writes until `done`; the longest time between two answers, and of one write, ms. */
async function workUntil(done: () => boolean): Promise<{ gap: number; write: number; answers: number }> {
  const write = h.db.raw.prepare(
    "insert into doc_update (name, bytes, actor_id, at) values ('plan/large', zeroblob(200), 'a', 0)",
  );
  const longest = { gap: 0, write: 0, answers: 0 };
  let last = performance.now();
  while (!done()) {
    expect((await GET(request("/api/health"))).status).toBe(200);
    const from = performance.now();
    write.run();
    longest.write = Math.max(longest.write, performance.now() - from);
    await new Promise((next) => setTimeout(next, 2));
    longest.gap = Math.max(longest.gap, performance.now() - last);
    last = performance.now();
    longest.answers++;
  }
  return longest;
}

test("[INV-25] no request and no write waits half a second while a large database is backed up and tested", async () => {
  fill();
  const settings = { on: false, time: "03:30", folder: join(place.folder, "backups"), copyFolder: "", seen: 0 };
  const keep = { days: 1, weeks: 0, months: 0 };
  must(await saveBackupSettings(h.app, PETRA, backupSettingsSchema.parse({ ...settings, keep })));
  const runs = createBackupRuns({ app: h.app });
  let looks = 0;
  const before = await workUntil(() => ++looks > 200);
  runs.begin();
  const during = await workUntil(() => runs.state().runningSince === null);
  const { last, problem } = runs.state();
  expect(problem).toBeNull();
  expect(last?.bytes).toBeGreaterThan(SIZE);
  expect(during.answers).toBeGreaterThan(20);
  expect(during.gap, JSON.stringify({ before, during, took: last?.tookMs })).toBeLessThan(500);
}, 300_000);
