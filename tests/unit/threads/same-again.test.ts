/** What is sent twice within seconds is stored once, and told once; what a plan can hold of comments. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { insertComment, insertThread } from "#db/repos/thread-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { MOST_THREAD_COMMENTS, MOST_THREADS, TALK_MAX } from "#lib/margin/talk-bounds.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { addComment, listPlanThreads, openThread } from "#server/threads/threads.ts";
import { must, openStudio, outcome, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";

let s: PlanStudio;
let id = "";
beforeEach(() => {
  s = openStudio();
  id = must(createPlan(s.app, s.people.jonas, { title: "Long", lengthSeconds: 600, roomId: ROOMS.harbour })).id;
});
afterEach(() => s.stop());

const open = (body: string, who = s.people.ines) => openThread(s.app, who, id, { anchor: { kind: "plan" }, body });
const threads = () => must(listPlanThreads(s.app, s.people.jonas, id)).threads;
const notices = () => s.db.raw.prepare("SELECT count(*) FROM notice").pluck().get();

describe("sent again", () => {
  it("a thread and a comment are one, with the first id", () => {
    const ids = new Set(Array.from({ length: 50 }, () => must(open("Slower")).id));
    const [thread = ""] = [...ids];
    const comments = new Set(
      Array.from({ length: 50 }, () => must(addComment(s.app, s.people.jonas, thread, "Done")).id),
    );
    expect([ids.size, comments.size]).toEqual([1, 1]);
    expect(threads().map((t) => t.comments.map((c) => c.body))).toEqual([["Slower", "Done"]]);
    expect(notices()).toBe(2);
  });

  it("by somebody else, in other words or after a while, it is another", () => {
    must(open("Slower"));
    must(open("Slower", s.people.jonas));
    must(open("Slower!"));
    s.advance(11_000);
    must(open("Slower"));
    expect(threads()).toHaveLength(4);
  });

  it("what was refused is tried again", () => {
    expect(outcome(openThread(s.app, s.people.ines, id, { anchor: { kind: "item", itemId: "m1" }, body: "x" }))).toBe(
      "no-such-item",
    );
    expect(outcome(openThread(s.app, s.people.ines, id, { anchor: { kind: "item", itemId: "m1" }, body: "x" }))).toBe(
      "no-such-item",
    );
  });
});

describe("[INV-25] a plan holds", () => {
  const fill = (count: number, comments: number, body: string) =>
    inTransaction(s.db, () => {
      for (let t = 0; t < count; t++) {
        insertThread(s.db, { id: `t${t}`, planId: id, anchor: { kind: "plan" }, at: t });
        for (let c = 0; c < comments; c++)
          insertComment(s.db, { id: `c${t}-${c}`, threadId: `t${t}`, authorId: "jonas", body, at: t + c });
      }
    });

  it("so many threads", () => {
    fill(MOST_THREADS, 1, "x");
    expect(outcome(open("One more"))).toBe("too-many-threads");
    expect(outcome(addComment(s.app, s.people.ines, "t0", "Here then"))).toBe("ok");
  });

  it("so many comments in one thread", () => {
    fill(1, MOST_THREAD_COMMENTS, "x");
    expect(outcome(addComment(s.app, s.people.ines, "t0", "One more"))).toBe("too-many-comments");
    expect(outcome(open("In a new one"))).toBe("ok");
  });

  it("so many letters", () => {
    fill(25, 10, "x".repeat(TALK_MAX / 250 - 10));
    expect(outcome(open("x".repeat(4000)))).toBe("plan-talk-full");
    expect(outcome(addComment(s.app, s.people.ines, "t0", "x".repeat(4000)))).toBe("plan-talk-full");
    expect(outcome(open("A short one"))).toBe("ok");
  });
});
