/** The first steps as the database tells them, to whom, and putting them away. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { putCheck } from "#db/repos/check-repo.ts";
import { planParts } from "#lib/doc/layout.ts";
import { setText } from "#lib/doc/write.ts";
import { lastBackupAt } from "#server/backup/last-backup.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { putStepsAway, readFirstSteps, readOwnFirstSteps } from "#server/desk/first-steps.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { duplicatePlan } from "#server/plans/duplicate-plan.ts";
import { makeExample } from "#server/plans/example-plan.ts";
import { must, openStudio, outcome, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";

let s: PlanStudio;
beforeEach(() => {
  s = openStudio();
});
afterEach(() => s.stop());

const stateOf = (id: string) => must(readFirstSteps(s.app, s.people.petra)).steps.find((one) => one.id === id)?.state;
const begin = (title: string) =>
  must(createPlan(s.app, s.people.marta, { title, lengthSeconds: 600, roomId: ROOMS.harbour })).id;
/** As the server keeps it after a check: two moves. */
const checked = (planId: string) =>
  putCheck(s.db, {
    ...{ planId, generation: "g", seq: 1, studioMark: "s", programMark: "p", planMark: null, findingsMark: null },
    ...{ must: 0, look: 0, info: 0, strip: "60 60 pull,130 60 push" },
  });

test("a class is begun with its plan and written with its first moves; the example is none", () => {
  expect([stateOf("people"), stateOf("room"), stateOf("example"), stateOf("class")]).toEqual([
    "done",
    "done",
    "open",
    "open",
  ]);
  checked(must(makeExample(s.app, s.people.marta)).id);
  expect([stateOf("example"), stateOf("class")]).toEqual(["done", "open"]);
  const id = begin("Monday");
  expect(stateOf("class")).toBe("begun");
  checked(id);
  expect(stateOf("class")).toBe("done");
  // She manages and may not read what a coach writes.
  expect(JSON.stringify(readFirstSteps(s.app, s.people.petra))).not.toContain("Monday");
});

test("a copy of the example is no class of one's own until somebody writes in it, and takes no list away", async () => {
  const { marta } = s.people;
  const example = must(makeExample(s.app, marta)).id;
  checked(example);
  const { id } = must(duplicatePlan(s.app, marta, example));
  checked(id);
  expect(stateOf("class")).toBe("open");
  expect(readOwnFirstSteps(s.app, marta)?.map(({ state }) => state)).toEqual(["done", "open", "open"]);
  s.advance(1000);
  await s.write(planDoc(id), marta, (w) => setText(w, planParts(w.doc).title, "Tuesday"));
  expect(stateOf("class")).toBe("done");
  expect(readOwnFirstSteps(s.app, marta)).toBeNull();
});

test("a coach has a list of their own until they have written a class; the others have none", () => {
  const { marta, jonas, petra, sam } = s.people;
  expect(readOwnFirstSteps(s.app, marta)?.map(({ state }) => state)).toEqual(["open", "open", "open"]);
  const id = begin("Monday");
  expect(readOwnFirstSteps(s.app, marta)?.map(({ state }) => state)).toEqual(["open", "begun", "open"]);
  checked(id);
  expect(readOwnFirstSteps(s.app, marta)).toBeNull();
  expect(readOwnFirstSteps(s.app, jonas)).toHaveLength(3);
  for (const who of [petra, sam, null]) expect(readOwnFirstSteps(s.app, who)).toBeNull();
  expect(outcome(readFirstSteps(s.app, marta))).toBe("no-right");
});

test("a manager puts them away and takes them back; nobody else does", () => {
  const { petra, marta } = s.people;
  must(putStepsAway(s.app, petra, { away: true }));
  expect(must(readFirstSteps(s.app, petra)).away).toBe(true);
  expect(outcome(putStepsAway(s.app, marta, { away: false }))).toBe("no-right");
  must(putStepsAway(s.app, petra, { away: false }));
  expect(must(readFirstSteps(s.app, petra)).away).toBe(false);
});

test("the newest backup by its name; no folder and other files are none", () => {
  const base = mkdtempSync(join(tmpdir(), "springline-backups-"));
  const data = join(base, "data");
  try {
    const app = { db: s.app.db, env: { ...s.app.env, dataDir: data } };
    expect(lastBackupAt(app)).toBeNull();
    const folder = join(base, "backups");
    mkdirSync(folder);
    for (const name of [
      "springline-2026-11-20T081500Z-v0.1.0.tar",
      "springline-2026-11-28T235959Z-v0.1.0.tar",
      "springline-2026-11-29T000000Z-v0.1.0.tar.part",
      "notes.txt",
    ])
      writeFileSync(join(folder, name), "");
    expect(lastBackupAt(app)).toBe(Date.UTC(2026, 10, 28, 23, 59, 59));
  } finally {
    rmSync(base, { recursive: true, force: true });
  }
});
