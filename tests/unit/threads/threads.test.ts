/** Threads: pinned to the plan, an item or words; answered, settled, reopened; in the name the server knows. */

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import * as Y from "yjs";
import { setRoles } from "#db/repos/people-repo.ts";
import { countThreads, insertComment, insertThread } from "#db/repos/thread-repo.ts";
import { readItems, scriptOf } from "#lib/doc/read.ts";
import { deleteItem } from "#lib/doc/write.ts";
import type { Anchor } from "#lib/protocol/messages.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { deletePlan } from "#server/plans/delete-plan.ts";
import {
  addComment,
  listPlanThreads,
  newCommentSchema,
  newThreadSchema,
  openThread,
  settlePlanThread,
} from "#server/threads/threads.ts";
import { writeGoodClass } from "#tests/support/good-class.ts";
import { must, openStudio, outcome, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";

let s: PlanStudio;
let id = "";
beforeEach(async () => {
  s = openStudio();
  const { jonas } = s.people;
  id = must(createPlan(s.app, jonas, { title: "Pull and press", lengthSeconds: 600, roomId: ROOMS.harbour })).id;
  await writeGoodClass(s, planDoc(id), [jonas, jonas]);
});
afterEach(() => s.stop());

/** Pins the first words of an item's first line, as a page does. */
function wordsAnchor(itemId: string): Anchor {
  return s.app.documents.withDoc(planDoc(id), (doc) => {
    const line = scriptOf(doc, itemId)?.get(0);
    const text = line instanceof Y.XmlElement ? line.get(0) : undefined;
    if (!(text instanceof Y.XmlText)) throw new Error("no words");
    const at = (index: number) =>
      Buffer.from(Y.encodeRelativePosition(Y.createRelativePositionFromTypeIndex(text, index))).toString("base64");
    return { kind: "words", itemId, from: at(0), to: at(3), quote: "One" };
  });
}
const open = (anchor: Anchor, body = "Hm", who = s.people.ines) => openThread(s.app, who, id, { anchor, body });

describe("threads", () => {
  it("are pinned to the plan, an item or words, and every change is announced", () => {
    const { ines, jonas } = s.people;
    const words = wordsAnchor("m1");
    must(open({ kind: "plan" }, "In all: good"));
    must(open({ kind: "item", itemId: "m2" }, "Slower"));
    const third = must(open(words, "Which one?")).id;
    s.advance(1000);
    must(addComment(s.app, jonas, third, "The firm one"));
    const view = must(listPlanThreads(s.app, jonas, id)).threads;
    expect(view.map((t) => [t.anchor.kind, t.settled, t.comments.map((c) => `${c.authorName}: ${c.body}`)])).toEqual([
      ["plan", false, ["Ines: In all: good"]],
      ["item", false, ["Ines: Slower"]],
      ["words", false, ["Ines: Which one?", "Jonas: The firm one"]],
    ]);
    expect(view[2]?.anchor).toEqual(words);
    expect(view[2]?.comments[1]).toMatchObject({ authorId: "jonas", at: s.app.now() });
    expect(s.last(planDoc(id), "thread")?.thread).toEqual(view[2]);
    must(settlePlanThread(s.app, ines, third, true));
    expect(countThreads(s.db, id)).toEqual({ all: 3, open: 2 });
    expect(s.last(planDoc(id), "thread")?.thread).toMatchObject({ id: third, settled: true });
    must(settlePlanThread(s.app, ines, third, false));
    expect(countThreads(s.db, id)).toEqual({ all: 3, open: 3 });
  });

  it("[INV-09] are settled by a lead where a lead spoke: the writer answers what is fixed", () => {
    const { ines, jonas } = s.people;
    const asked = must(open({ kind: "item", itemId: "m2" }, "Too fast for first-timers: must be fixed")).id;
    expect(outcome(settlePlanThread(s.app, jonas, asked, true))).toBe("for-a-lead");
    must(addComment(s.app, jonas, asked, "Fixed."));
    expect(countThreads(s.db, id).open).toBe(1);
    must(settlePlanThread(s.app, ines, asked, true));
    must(settlePlanThread(s.app, jonas, asked, false));
    expect(outcome(settlePlanThread(s.app, jonas, asked, true))).toBe("for-a-lead");

    const own = must(open({ kind: "plan" }, "Too long?", jonas)).id;
    const all = must(listPlanThreads(s.app, jonas, id)).threads;
    expect(all.map((t) => t.leadSpoke)).toEqual([true, false]);
    expect(s.last(planDoc(id), "thread")?.thread).toEqual(all[1]);
    must(settlePlanThread(s.app, jonas, own, true));
    must(settlePlanThread(s.app, jonas, own, false));
    // A lead's answer makes it a lead's to settle, and so it stays when that person is no lead any more.
    must(addComment(s.app, ines, own, "By a minute."));
    expect(outcome(settlePlanThread(s.app, jonas, own, true))).toBe("for-a-lead");
    setRoles(s.db, ines.id, ["coach"]);
    expect(outcome(settlePlanThread(s.app, jonas, own, true))).toBe("for-a-lead");
    expect(must(listPlanThreads(s.app, jonas, id)).threads.map((t) => t.leadSpoke)).toEqual([true, true]);
    // Who becomes a lead later did not ask as one.
    const before = must(open({ kind: "plan" }, "And now?", jonas)).id;
    setRoles(s.db, jonas.id, ["lead"]);
    expect(must(listPlanThreads(s.app, jonas, id)).threads.find((t) => t.id === before)?.leadSpoke).toBe(false);
  });

  it("keep their order when several are written in one millisecond", () => {
    const thread = must(open({ kind: "plan" }, "0")).id;
    for (let i = 1; i < 8; i++) must(addComment(s.app, s.people.jonas, thread, String(i)));
    const bodies = must(listPlanThreads(s.app, s.people.jonas, id)).threads[0]?.comments.map((c) => c.body);
    expect(bodies).toEqual(["0", "1", "2", "3", "4", "5", "6", "7"]);
  });

  it("keep their quote when the item is taken out, and cannot be opened on one that is gone or has no words", async () => {
    const words = wordsAnchor("m1");
    must(open(words));
    await s.write(planDoc(id), s.people.jonas, (w) => deleteItem(w, "m1", 5));
    s.advance(60_000);
    expect(must(listPlanThreads(s.app, s.people.jonas, id)).threads[0]?.anchor).toEqual(words);
    expect(outcome(open(words))).toBe("no-such-item");
    expect(outcome(open({ kind: "item", itemId: "m1" }))).toBe("no-such-item");
    expect(outcome(open({ kind: "item", itemId: "nobody" }))).toBe("no-such-item");
    const heading = s.app.documents.withDoc(planDoc(id), readItems).find((i) => i.kind === "heading")?.id ?? "";
    expect(outcome(open({ ...words, itemId: heading } as Anchor))).toBe("no-words");
    expect(outcome(open({ kind: "item", itemId: heading }))).toBe("ok");
  });

  it("[INV-28] are pinned to words that stand in the script, or stood there a moment ago", async () => {
    const words = wordsAnchor("m1") as Extract<Anchor, { kind: "words" }>;
    const other = wordsAnchor("m2") as typeof words;
    expect(outcome(open({ ...words, quote: "Words that nobody ever wrote" }))).toBe("words-gone");
    // Places in another item's script, at either end.
    expect(outcome(open({ ...words, from: other.from, to: other.to }))).toBe("words-gone");
    expect(outcome(open({ ...words, to: words.from }))).toBe("words-gone");
    const root = Buffer.from(Y.encodeRelativePosition(new Y.RelativePosition(null, "title", null, 0))).toString(
      "base64",
    );
    expect(outcome(open({ ...words, from: root, to: root }))).toBe("words-gone");
    // The page is behind: something was written into the words meanwhile.
    const written = (quote: string) =>
      s.write(planDoc(id), s.people.jonas, ({ doc }) => {
        const line = scriptOf(doc, "m1")?.get(0);
        const text = line instanceof Y.XmlElement ? line.get(0) : undefined;
        if (text instanceof Y.XmlText) text.insert(1, quote);
      });
    await written("!!");
    expect(outcome(open(words))).toBe("words-gone");
    await written("One ");
    expect(outcome(open(words))).toBe("ok");
  });

  it("are closed to those who may not read the plan, and when the plan is gone", () => {
    const thread = must(open({ kind: "plan" })).id;
    for (const who of [s.people.marta, s.people.sam, s.people.petra]) {
      expect(outcome(open({ kind: "plan" }, "x", who))).toBe("not-found");
      expect(outcome(addComment(s.app, who, thread, "x"))).toBe("not-found");
      expect(outcome(settlePlanThread(s.app, who, thread, true))).toBe("not-found");
    }
    expect(outcome(addComment(s.app, s.people.ines, "nothing", "x"))).toBe("not-found");
    must(deletePlan(s.app, s.people.jonas, id));
    expect(outcome(addComment(s.app, s.people.jonas, thread, "x"))).toBe("not-found");
  });
});

describe("what a page sends", () => {
  const takes = (anchor: unknown, body: unknown = "Hm") => newThreadSchema.safeParse({ anchor, body }).success;

  it("is bounded: bodies of 1 to 4000 characters, quotes of 1 to 500", () => {
    expect(takes({ kind: "plan" }, "x".repeat(4000))).toBe(true);
    for (const body of ["", "   ", "x".repeat(4001), 5]) expect(takes({ kind: "plan" }, body)).toBe(false);
    expect(newCommentSchema.safeParse({ body: " " }).success).toBe(false);
    expect(newCommentSchema.safeParse({ body: "x", authorId: "ines" }).success).toBe(false);
    const words = wordsAnchor("m1");
    expect(takes(words)).toBe(true);
    expect(takes({ ...words, quote: "x".repeat(500) })).toBe(true);
    for (const quote of ["", " ", "x".repeat(501), undefined]) expect(takes({ ...words, quote })).toBe(false);
  });

  it("must be a place that can be read", () => {
    const words = wordsAnchor("m1");
    for (const from of ["", "not base64!", "AAAA".repeat(200), Buffer.from("hello there").toString("base64")]) {
      expect(takes({ ...words, from })).toBe(false);
    }
    for (const itemId of ["", "Not An Id", "a".repeat(65)]) expect(takes({ kind: "item", itemId })).toBe(false);
    expect(takes({ kind: "somewhere" })).toBe(false);
    expect(takes({ kind: "plan", itemId: "m1" })).toBe(false);
  });
});

it("comments from before it was kept count as a lead's where their author is one now", () => {
  for (const [thread, authorId] of [
    ["of-ines", "ines"],
    ["of-jonas", "jonas"],
    ["of-nobody", "left"],
  ] as const) {
    insertThread(s.db, { id: thread, planId: id, anchor: { kind: "plan" }, at: 1 });
    insertComment(s.db, { id: `c-${thread}`, threadId: thread, authorId, body: "Hm", at: 1 });
  }
  setRoles(s.db, "ines", ["coach", "lead"]);
  s.db.raw.exec("UPDATE comment SET as_lead = 0");
  const migration = readFileSync(join(import.meta.dirname, "../../../db/migrations/0015_comment_as_lead.sql"), "utf8");
  s.db.raw.exec(migration.split("--> statement-breakpoint")[1] ?? "");
  const threads = must(listPlanThreads(s.app, s.people.jonas, id)).threads;
  expect(threads.map((t) => [t.id, t.leadSpoke])).toEqual([
    ["of-ines", true],
    ["of-jonas", false],
    ["of-nobody", false],
  ]);
});
