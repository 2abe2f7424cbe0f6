/** Checking on threads of its own: what a page hears, and that a thread that dies in the middle takes nothing with it. */

import { monitorEventLoopDelay } from "node:perf_hooks";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { readCheck } from "#db/repos/check-repo.ts";
import { readPlanRow } from "#db/repos/plan-repo.ts";
import { analyse } from "#lib/analysis/check-plan.ts";
import { Marker } from "#lib/analysis/marks.ts";
import { PLAN_BOUNDS } from "#lib/doc/bounds.ts";
import { readItems, readPlan } from "#lib/doc/read.ts";
import { setHead, setItemField } from "#lib/doc/write.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import { UPPER_BODY_AND_TRUNK } from "#seed/plans/upper-body-and-trunk.ts";
import { createChecks } from "#server/check/checks.ts";
import { type CheckThreads, createThreads } from "#server/check/threads.ts";
import type { CheckAnswer, Checks } from "#server/context/checks.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { assess } from "#server/plans/assess-plan.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { planStudio } from "#server/studio-data/plan-studio.ts";
import { WAIT_MS } from "#tests/support/attacked.ts";
import { writeGoodClass } from "#tests/support/good-class.ts";
import { often } from "#tests/support/long.ts";
import { must, openStudio, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";

let s: PlanStudio;
let threads: CheckThreads;
let checks: Checks;
let heard: CheckAnswer[];
beforeEach(() => {
  s = openStudio();
  heard = [];
  threads = createThreads({ databaseFile: s.db.file, log: s.app.log, threads: 1 });
  checks = createChecks({
    ...{ app: s.app, runner: threads, programMark: "this", ms: { quiet: 1, longest: 5 } },
    heard: (answer) => heard.push(answer),
  });
});
afterEach(async () => {
  await checks.stop();
  await s.stop();
});

async function newClass(title: string): Promise<string> {
  const { jonas } = s.people;
  const { id } = must(createPlan(s.app, jonas, { title, lengthSeconds: 600, roomId: ROOMS.harbour }));
  await writeGoodClass(s, planDoc(id), [jonas, jonas]);
  return id;
}

/** Worked out here and now, from the document as the rooms have it. */
function worked(id: string) {
  const studio = planStudio(s.db, ROOMS.harbour);
  const plan = s.app.documents.withDoc(planDoc(id), (doc) => readPlan(doc, studio));
  const { findings } = analyse(plan);
  const marker = new Marker();
  return { planMark: marker.plan(plan), findingsMark: marker.findings(findings), findings };
}

const setSeconds = (id: string, seconds: number) =>
  s.app.documents.transact(planDoc(id), "jonas", (doc) => setItemField({ doc, origin: 1 }, "m1", "seconds", seconds));

test("what a thread answers is what is worked out here, first and after each edit", async () => {
  const id = await newClass("Pull");
  for (const seconds of [60, 47, 200, 5]) {
    setSeconds(id, seconds);
    expect(await checks.now(id)).toMatchObject(worked(id));
  }
  expect(await checks.now("nobody-made-it")).toBeNull();
});

describe("a thread that is killed", () => {
  test("in the middle of its work: the plan is checked by another, and writing goes on meanwhile", async () => {
    const ids = [await newClass("One"), await newClass("Two"), await newClass("Three")];
    await checks.now(ids[0] ?? "");
    const [first] = threads.threadIds;
    const answers = ids.map((id) => checks.now(id));
    await threads.kill(0);
    // Saving and relaying ask nothing of it.
    for (const id of ids) setSeconds(id, 55);
    expect(s.app.documents.withDoc(planDoc(ids[1] ?? ""), readItems).find((item) => item.id === "m1")).toMatchObject({
      seconds: 55,
    });
    expect((await Promise.all(answers)).map((answer) => answer?.planId)).toEqual(ids);
    expect(threads.threadIds).not.toEqual([first]);
    for (const id of ids) expect(await checks.now(id)).toMatchObject(worked(id));
  });

  test("again and again: each plan is given up for now after two tries, and checked when it is asked for again", async () => {
    const id = await newClass("One");
    const answer = checks.now(id);
    await threads.kill(0);
    await threads.kill(0);
    const given = await answer;
    expect(given === null || given.planId === id).toBe(true);
    expect(await checks.now(id)).toMatchObject(worked(id));
  });
});

describe("what was answered last", () => {
  const kept = (id: string) => {
    const row = readPlanRow(s.db, id);
    return row && checks.kept(row, planStudio(s.db, row.roomId).mark);
  };

  test("counts until the document, the studio or the program changes", async () => {
    const id = await newClass("Pull");
    expect(kept(id)).toBeUndefined();
    await checks.now(id);
    const { planMark, findingsMark, findings } = worked(id);
    const must = findings.filter((finding) => finding.level === "must").length;
    expect(kept(id)).toMatchObject({ planMark, findingsMark, must });

    s.app.documents.transact(planDoc(id), "jonas", (doc) => setHead({ doc, origin: 1 }, "lengthSeconds", 900));
    expect(kept(id)).toBeUndefined();
    await checks.now(id);
    expect(kept(id)).toBeDefined();
    const row = readPlanRow(s.db, id);
    expect(row && checks.kept(row, "another studio")).toBeUndefined();
    const other = createChecks({ app: s.app, runner: threads, programMark: "another", heard: () => undefined });
    expect(row && other.kept(row, planStudio(s.db, row.roomId).mark)).toBeUndefined();
    expect(readCheck(s.db, id)?.programMark).toBe("this");
  });
});

test("a plan written in many times is checked once the writing pauses, as it is then", async () => {
  const id = await newClass("Pull");
  await checks.now(id);
  heard.length = 0;
  for (let seconds = 40; seconds < 60; seconds++) {
    setSeconds(id, seconds);
    checks.written(id);
  }
  await checks.idle();
  expect(heard.length).toBeLessThan(5);
  expect(heard.at(-1)).toMatchObject({ planMark: worked(id).planMark });
});

test("a very long plan is assessed for ten people at once, and the thread that serves people goes on", async () => {
  const reading = { plan: longPlan(often(80, PLAN_BOUNDS.most)), unknownItems: 0 };
  const lag = monitorEventLoopDelay({ resolution: 5 });
  lag.enable();
  const found = await Promise.all(Array.from({ length: 10 }, () => checks.assess("long", reading)));
  lag.disable();
  expect(lag.max / 1e6).toBeLessThan(WAIT_MS);
  const here = assess(reading);
  expect(here?.findings.length).toBeGreaterThan(often(5, 10));
  for (const one of found) expect(one).toEqual(here);
}, 180_000);

/** The demo's class again and again, with all its lines. */
function longPlan(most: number): Plan {
  const { items } = UPPER_BODY_AND_TRUNK;
  const again = Array.from({ length: most }, (_, n) => ({ ...(items[n % items.length] as PlanItem), id: `i${n}` }));
  return { ...UPPER_BODY_AND_TRUNK, items: again };
}
