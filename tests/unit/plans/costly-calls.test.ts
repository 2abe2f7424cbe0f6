/** [INV-25] What one signed-in person can make the server do in one call, at the bounds: each keeps the others waiting. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { insertMoment } from "#db/repos/moment-repo.ts";
import { insertComment, insertThread } from "#db/repos/thread-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { MOST_THREADS, TALK_MAX } from "#lib/margin/talk-bounds.ts";
import { planWelcome } from "#server/news/plan-news.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { importPlan } from "#server/plans/import-plan.ts";
import { markPlatesRead } from "#server/rounds/plates-read.ts";
import { readRounds } from "#server/rounds/read-rounds.ts";
import { saveThreads } from "#server/threads/save-threads.ts";
import { listPlanThreads } from "#server/threads/threads.ts";
import { cpuMs } from "#tests/support/cpu-time.ts";
import { must, openStudio, outcome, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";

/** Processor time, ms, of the thread that serves everybody. */
const MOST_MS = 500;
let s: PlanStudio;
let id = "";
beforeEach(() => {
  s = openStudio();
  id = must(createPlan(s.app, s.people.jonas, { title: "Full", lengthSeconds: 600, roomId: ROOMS.harbour })).id;
});
afterEach(() => s.stop());

const keys = (count: number) => `{${Array.from({ length: count }, (_, n) => `"k${n}":1`).join(",")}}`;

describe("a file of 5 MB", () => {
  it.each([
    ["of empty values", `{"a":[${Array(1_600_000).fill("{}").join(",")}]}`],
    ["of keys", keys(350_000)],
    ["of lists of keys", `{"a":[${Array(35).fill(keys(9_990)).join(",")}]}`],
    ["of brackets", "[{".repeat(40_000)],
    ["of one text", `{"a":"${"\\n".repeat(2_400_000)}"}`],
  ])("%s", (_what, file) => {
    let said = "";
    expect(cpuMs(() => (said = outcome(importPlan(s.app, s.people.jonas, file))))).toBeLessThan(MOST_MS);
    expect(said).toBe("bad-plan-file");
  });
});

describe("a plan with all the talk that it can hold", () => {
  beforeEach(() => {
    const body = "x".repeat(TALK_MAX / MOST_THREADS - 20);
    inTransaction(s.db, () => {
      for (let t = 0; t < MOST_THREADS; t++) {
        insertThread(s.db, { id: `t${t}`, planId: id, anchor: { kind: "plan" }, at: t });
        insertComment(s.db, { id: `c${t}`, threadId: `t${t}`, authorId: "jonas", body, at: t });
      }
    });
  });
  it.each([
    ["is read", () => JSON.stringify(must(listPlanThreads(s.app, s.people.jonas, id)))],
    ["is saved as a file", () => JSON.stringify(must(saveThreads(s.app, s.people.jonas, id)))],
    ["is opened by a page", () => JSON.stringify(planWelcome(s.app, id))],
  ])("%s", (_what, act) => {
    expect(cpuMs(act)).toBeLessThan(MOST_MS);
  });
});

it("rounds of a plan that was offered and taken back a hundred times", () => {
  const threads = Array.from({ length: MOST_THREADS }, (_, n) => ({
    id: `6f1d0e52-0000-4000-8000-${n}`,
    settled: n % 2 === 0,
    comments: 1,
  }));
  const finding = { rule: "total-length", items: [], message: 'as "level":"must","items":[', values: {} } as const;
  const findings = [
    { ...finding, level: "must" },
    { ...finding, level: "look" },
    { ...finding, level: "look" },
  ].map(({ rule, level, items, message, values }) => ({ rule, level, items, message, values }) as never);
  inTransaction(s.db, () => {
    for (let n = 0; n < 200; n++) {
      const kind = n % 2 === 0 ? "offered" : "taken-back";
      const moment = {
        planId: id,
        round: 0,
        kind,
        at: n,
        actorId: "jonas",
        note: null,
        hash: "",
        planJson: null,
      } as const;
      insertMoment(s.db, { ...moment, findings, threads });
    }
  });
  const told: unknown[] = [];
  expect(cpuMs(() => told.push(must(readRounds(s.app, s.people.jonas, id)).besides))).toBeLessThan(MOST_MS);
  const heads = told[0] as readonly unknown[];
  expect(heads).toHaveLength(200);
  expect(heads[7]).toMatchObject({ must: 1, look: 2, info: 0, threads: MOST_THREADS, openThreads: MOST_THREADS / 2 });
});

it("plates that the plan does not have are not kept as read", () => {
  const plates = Array.from({ length: 1000 }, (_, n) => ({ itemId: `nothing-${n}`, hash: "a".repeat(64) }));
  must(markPlatesRead(s.app, s.people.ines, id, { on: true, plates }));
  expect(s.db.raw.prepare("SELECT count(*) FROM plate_read").pluck().get()).toBe(0);
});
