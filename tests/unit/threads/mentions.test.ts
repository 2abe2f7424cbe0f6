/** Naming a colleague: who may be named, who is told, when it was seen; and settling with the answer in sight. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { listMentions } from "#db/repos/mention-repo.ts";
import { namedIn, namedPieces } from "#lib/margin/named.ts";
import type { Anchor } from "#lib/protocol/messages.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { sharePlan } from "#server/plans/share-plan.ts";
import { listPlanReaders, seeMentions } from "#server/threads/mentions.ts";
import { addComment, listPlanThreads, openThread, settlePlanThread } from "#server/threads/threads.ts";
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

const ITEM: Anchor = { kind: "item", itemId: "m2" };
const open = (body: string, mentions?: string[], who = s.people.ines) =>
  openThread(s.app, who, id, { anchor: ITEM, body, ...(mentions ? { mentions } : {}) });
const notices = () =>
  s.db.raw.prepare("select user_id as who, kind, data_json as data from notice order by id").all() as {
    who: string;
    kind: string;
    data: string;
  }[];
const told = () => notices().map(({ who, kind }) => `${who}: ${kind}`);

describe("a colleague who is named", () => {
  it("is one who may read the plan", () => {
    const names = () => must(listPlanReaders(s.app, s.people.jonas, id)).people.map((p) => p.name);
    expect(names()).toEqual(["Ines", "Jonas"]);
    must(sharePlan(s.app, s.people.jonas, id, { userId: "marta", on: true }));
    expect(names()).toEqual(["Ines", "Jonas", "Marta"]);
    expect(outcome(listPlanReaders(s.app, s.people.sam, id))).toBe("not-found");
  });

  it("is refused when not in the words, or not a reader of the plan", () => {
    expect(outcome(open("Look at this", ["jonas"]))).toBe("unknown-mention");
    expect(outcome(open("@Sam look", ["sam"]))).toBe("unknown-mention");
    expect(outcome(open("@Jonas look", ["nobody"]))).toBe("unknown-mention");
    expect(outcome(open("@Jonasson look", ["jonas"]))).toBe("unknown-mention");
    const { id: thread } = must(open("@Jonas look", ["jonas"]));
    expect(outcome(addComment(s.app, s.people.jonas, thread, "Hm", ["ines"]))).toBe("unknown-mention");
    expect(must(listPlanThreads(s.app, s.people.ines, id)).threads).toHaveLength(1);
  });

  it("is stored, shown with the comment, and told once", () => {
    const { id: thread } = must(open("@Jonas, which one?", ["jonas"]));
    const comment = must(listPlanThreads(s.app, s.people.jonas, id)).threads[0]?.comments[0];
    expect(comment?.names).toEqual(["jonas"]);
    expect(told()).toEqual(["jonas: mention"]);
    expect(JSON.parse(notices()[0]?.data ?? "")).toEqual({ byId: "ines", threadId: thread, itemId: "m2" });
    must(addComment(s.app, s.people.jonas, thread, "The firm one, @Ines", ["ines"]));
    expect(told().slice(1)).toEqual(["ines: mention"]);
    must(addComment(s.app, s.people.ines, thread, "Thanks"));
    expect(told().slice(2)).toEqual(["jonas: comment"]);
  });

  it("finds the thread in their list, and has seen it once it was in front of them", () => {
    const { id: first } = must(open("@Jonas, which one?", ["jonas"]));
    s.advance(1000);
    const { id: second } = must(open("And this, @Jonas?", ["jonas"]));
    const list = () => listMentions(s.db, "jonas").map((m) => [m.threadId, m.seenAt !== null]);
    expect(list()).toEqual([
      [second, false],
      [first, false],
    ]);
    expect(listMentions(s.db, "jonas")[0]).toMatchObject({ planId: id, byName: "Ines", anchor: ITEM, settled: false });
    const comments = listMentions(s.db, "jonas").map((m) => m.commentId);
    must(seeMentions(s.app, s.people.jonas, first, comments));
    must(seeMentions(s.app, s.people.ines, second, comments));
    expect(outcome(seeMentions(s.app, s.people.sam, second, comments))).toBe("not-found");
    expect(list()).toEqual([
      [second, false],
      [first, true],
    ]);
  });

  it("is not told any more once they may not read the plan", () => {
    must(sharePlan(s.app, s.people.jonas, id, { userId: "marta", on: true }));
    const { id: thread } = must(open("Hm", undefined, s.people.marta));
    must(sharePlan(s.app, s.people.jonas, id, { userId: "marta", on: false }));
    must(addComment(s.app, s.people.ines, thread, "Well"));
    expect(told()).toEqual(["jonas: comment", "jonas: comment"]);
  });
});

describe("names in words", () => {
  const people = [
    { id: "i", name: "Ines" },
    { id: "id", name: "Ines Duarte" },
    { id: "o", name: "Øystein Ås" },
  ];
  it("are whole names, the longer one first, each person once", () => {
    expect(namedIn("@Ines Duarte and @ines, @Ines Duarte", people)).toEqual(["id", "i"]);
    expect(namedIn("@øystein ås!", people)).toEqual(["o"]);
    expect(namedIn("ines@tholepin.example, @Inesita, @@Ines", people)).toEqual(["i"]);
    expect(namedPieces("Well, @Ines.", people).map((p) => p.text)).toEqual(["Well, ", "@Ines", "."]);
  });
});

describe("settling", () => {
  const thread = () => must(open("Which one?")).id;
  const settle = (t: string, seen?: number) => settlePlanThread(s.app, s.people.ines, t, true, seen);

  it("is refused while there is a comment that was not in sight, with its words", () => {
    const t = thread();
    must(addComment(s.app, s.people.jonas, t, "The firm one"));
    const refused = settle(t, 1);
    expect(outcome(refused)).toBe("answered-since");
    expect(refused).toMatchObject({
      error: { status: 409, details: { comments: [{ authorName: "Jonas", body: "The firm one" }] } },
    });
    expect(must(listPlanThreads(s.app, s.people.ines, id)).threads[0]?.settled).toBe(false);
    expect(outcome(settle(t, 2))).toBe("ok");
  });

  it("is as before for a page that does not say what was in sight", () => {
    const t = thread();
    must(addComment(s.app, s.people.jonas, t, "The firm one"));
    expect(outcome(settle(t))).toBe("ok");
  });

  it("can be taken back by a reader of the plan, and an answer to a settled thread says that it is", () => {
    const t = thread();
    must(settle(t, 1));
    expect(must(addComment(s.app, s.people.jonas, t, "But"))).toMatchObject({ settled: true });
    must(settlePlanThread(s.app, s.people.jonas, t, false));
    expect(s.last(planDoc(id), "thread")?.thread).toMatchObject({ id: t, settled: false });
  });
});

describe("threads on a change or a finding", () => {
  const on = (anchor: Anchor) => outcome(openThread(s.app, s.people.ines, id, { anchor, body: "Hm" }));
  it("are on a move's change and on items that there are", () => {
    expect(on({ kind: "change", itemId: "m2" })).toBe("ok");
    expect(on({ kind: "change", itemId: "h1" })).toBe("no-change");
    expect(on({ kind: "change", itemId: "gone" })).toBe("no-such-item");
    const finding = (rule: string, itemIds: string[], key: string): Anchor => ({ kind: "finding", rule, itemIds, key });
    expect(on(finding("springs-out-of-range", ["m2"], "springs-out-of-range:light:m2:firm"))).toBe("ok");
    expect(on(finding("total-length", [], "total-length:over:"))).toBe("ok");
    expect(on(finding("theme-missed", [], "theme-missed:absent::arms"))).toBe("ok");
    expect(on(finding("rule-crashed", [], "rule-crashed:crashed:total-length"))).toBe("ok");
    expect(on(finding("springs-out-of-range", ["gone"], "springs-out-of-range:light:gone"))).toBe("no-such-item");
  });

  it("are on findings that a check of the studio could have", async () => {
    const finding = (rule: string, itemIds: string[], key: string): Anchor => ({ kind: "finding", rule, itemIds, key });
    for (const [rule, itemIds, key] of [
      ["no-such-rule", [], "no-such-rule:over:"],
      ["total-length", [], "total-length:over:FORGED"],
      ["total-length", [], "total-length:forged:"],
      ["springs-out-of-range", ["m2"], "springs-out-of-range:light:m1"],
      ["rule-crashed", [], "rule-crashed:crashed:no-such-rule"],
    ] as const)
      expect(on(finding(rule, [...itemIds], key)), key).toBe("no-such-finding");
    // Every finding of a real plan can be commented on.
    for (const { rule, items, key = "" } of await s.findings(id)) expect(on(finding(rule, [...items], key))).toBe("ok");
  });
});
