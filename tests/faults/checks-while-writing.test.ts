/** [INV-20] A checking thread is killed in the middle of its work, again and again, while people write in that very plan. */

import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { afterEach, beforeEach, expect, test } from "vitest";
import { openDatabase } from "#db/connection.ts";
import { analyse } from "#lib/analysis/check-plan.ts";
import { Marker } from "#lib/analysis/marks.ts";
import { readPlan } from "#lib/doc/read.ts";
import { createChecks } from "#server/check/checks.ts";
import { PlaceEnded } from "#server/check/runner.ts";
import { type CheckThreads, createThreads } from "#server/check/threads.ts";
import type { Checks } from "#server/context/checks.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { loadDoc } from "#server/doc-log/stored-doc.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { planStudio } from "#server/studio-data/plan-studio.ts";
import { attachSync } from "#server/sync/attach.ts";
import { eventually } from "#tests/support/eventually.ts";
import { writeGoodClass } from "#tests/support/good-class.ts";
import { must, openStudio, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { hashNothing, signInAll } from "#tests/support/sign-in.ts";

let s: PlanStudio;
let threads: CheckThreads;
let checks: Checks;
/** Orders whose thread ended before it had answered. */
let cutShort: number;
const ends: (() => unknown)[] = [];
beforeEach(() => {
  s = openStudio({ clock: Date.now() });
  cutShort = 0;
  threads = createThreads({ databaseFile: s.db.file, log: s.app.log, threads: 1 });
  const run: CheckThreads["run"] = (place, order) =>
    threads.run(place, order).catch((cause: unknown) => {
      if (cause instanceof PlaceEnded) cutShort++;
      throw cause;
    });
  const runner = { places: threads.places, run, assess: threads.assess, stop: () => threads.stop() };
  checks = createChecks({
    app: s.app,
    runner,
    programMark: "this",
    ms: { quiet: 1, longest: 5 },
    heard: () => undefined,
  });
});
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
  await checks.stop();
  await s.stop();
});

async function open(planId: string) {
  await hashNothing(s);
  const cookies = (await signInAll(s, ["jonas"])).get("jonas") ?? "";
  const http = createServer();
  const door = attachSync({ rooms: s.rooms, server: http });
  await new Promise<void>((done) => http.listen(0, "127.0.0.1", done));
  const url = `ws://127.0.0.1:${(http.address() as AddressInfo).port}`;
  ends.push(() => http.close(), door.detach);
  return async () => {
    const page = await new RawClient(url, planDoc(planId), { cookies }).synced();
    ends.push(() => page.end());
    return page;
  };
}

test("everything that is called saved is on disk, nobody waits for a check, and the findings come after all", async () => {
  const { jonas } = s.people;
  const { id } = must(createPlan(s.app, jonas, { title: "Pull", lengthSeconds: 600, roomId: ROOMS.harbour }));
  await writeGoodClass(s, planDoc(id), [jonas, jonas]);
  const page = await open(id);
  const writers = [await page(), await page()];
  await checks.now(id);

  let n = 0;
  let longest = 0;
  const typing = setInterval(() => {
    for (const [index, writer] of writers.entries())
      writer.edit((doc) => {
        doc.getMap("words").set(`${index}-${n}`, true);
        doc
          .getMap<{ set(key: string, value: number): void }>("items")
          .get("m1")
          ?.set("seconds", 40 + (n % 20));
      });
    n++;
  }, 3);
  const asking = new Set<Promise<unknown>>();
  for (let kills = 0; kills < 4; kills++) {
    const answer = checks.now(id);
    asking.add(answer);
    // In the middle: the order is with the thread, which has been started or is at work.
    await eventually("a thread is there", () => threads.threadIds.length > 0);
    await threads.kill(0);
    const from = performance.now();
    const sent = writers.map((writer) => writer.sent);
    await eventually("what was typed is saved", () => writers.every((w, i) => w.savedCount >= (sent[i] ?? 0)));
    longest = Math.max(longest, performance.now() - from);
  }
  clearInterval(typing);
  for (const writer of writers) await writer.saved();
  await Promise.all(asking);
  expect(cutShort).toBeGreaterThanOrEqual(4);
  expect(longest).toBeLessThan(500);
  expect(writers.map((writer) => writer.closeCode)).toEqual([undefined, undefined]);

  const disk = openDatabase(s.db.file, { readOnly: true });
  ends.push(() => disk.close());
  const stored = loadDoc(disk, `plan/${id}`, s.app.log)?.doc;
  expect(stored?.getMap("words").size).toBe(2 * n);
  const plan = s.app.documents.withDoc(planDoc(id), (doc) => readPlan(doc, planStudio(s.db, ROOMS.harbour)));
  const { findings } = analyse(plan);
  const marker = new Marker();
  expect(await checks.now(id)).toMatchObject({
    findings,
    planMark: marker.plan(plan),
    findingsMark: marker.findings(findings),
  });
});
