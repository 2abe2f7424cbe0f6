/** A plan with 200 threads of five comments: what a page costs that joins, and what a comment costs. */
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { insertComment, insertThread, listThreads } from "#db/repos/thread-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { planWelcome } from "#server/news/plan-news.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { addComment } from "#server/threads/threads.ts";
import { cpuMs } from "#tests/support/cpu-time.ts";
import { must, openStudio, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";

const THREADS = 200;
const COMMENTS = 5;
let s: PlanStudio;
let id = "";
beforeEach(() => {
  s = openStudio();
  id = must(createPlan(s.app, s.people.jonas, { title: "Long", lengthSeconds: 600, roomId: ROOMS.harbour })).id;
  inTransaction(s.db, () => {
    for (let t = 0; t < THREADS; t++) {
      insertThread(s.db, { id: `t${t}`, planId: id, anchor: { kind: "plan" }, at: t });
      for (let c = 0; c < COMMENTS; c++) {
        const authorId = c % 2 === 0 ? "ines" : "jonas";
        insertComment(s.db, { id: `c${t}-${c}`, threadId: `t${t}`, authorId, body: "x".repeat(120), at: t + c });
      }
    }
  });
});
afterEach(() => s.stop());

const bytes = (value: unknown) => JSON.stringify(value).length;

it("a comment sends its own thread alone", () => {
  const all = bytes(listThreads(s.db, id));
  s.announced.length = 0;
  must(addComment(s.app, s.people.jonas, "t7", "Done."));
  const sent = s.announced.filter(({ news }) => news.t === "thread" || news.t === "threads");
  expect(sent.map(({ news }) => news.t)).toEqual(["thread"]);
  expect(s.last(planDoc(id), "thread")?.thread).toMatchObject({ id: "t7", leadSpoke: true });
  expect(bytes(sent[0]?.news)).toBeLessThan(all / 50);
});

it("joining prepares no statement a thread", () => {
  listThreads(s.db, id); // prepares its three
  const asked = vi.spyOn(s.db.raw, "prepare");
  expect(listThreads(s.db, id)).toHaveLength(THREADS);
  expect(asked).not.toHaveBeenCalled();
});

// Before threads were sent one by one: 28 ms and 19 ms here; now 6 ms and 1 ms.
it("both are cheap", () => {
  const welcome = () => planWelcome(s.app, id);
  welcome();
  must(addComment(s.app, s.people.jonas, "t0", "Warm."));
  const rounds = 20;
  const joined = cpuMs(() => {
    for (let i = 0; i < rounds; i++) welcome();
  });
  const commented = cpuMs(() => {
    for (let i = 0; i < rounds; i++) must(addComment(s.app, s.people.jonas, `t${i + 1}`, "Done."));
  });
  expect(joined / rounds).toBeLessThan(40);
  expect(commented / rounds).toBeLessThan(20);
});
