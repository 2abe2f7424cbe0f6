/** Who is told of what, what they may read of it later, and when it counts as seen. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { insertNotice } from "#db/repos/notice-repo.ts";
import { removeAccess, setRoles } from "#db/repos/people-repo.ts";
import type { Person } from "#lib/policy/can.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { countUnseen, listNotices, seeAllNotices, seeNoticesOf } from "#server/notices/list-notices.ts";
import { chooseNotices, noticeChoiceOf, noticeChoiceSchema } from "#server/notices/notice-choices.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { deletePlan } from "#server/plans/delete-plan.ts";
import { sharePlan } from "#server/plans/share-plan.ts";
import { takeUp } from "#server/rounds/take-up.ts";
import { handBack } from "#server/sign-off/hand-back.ts";
import { handIn, takeBack } from "#server/sign-off/hand-in.ts";
import { readForSignOff } from "#server/sign-off/read-for-sign-off.ts";
import { signPlan } from "#server/sign-off/sign-plan.ts";
import { withdrawEdition } from "#server/sign-off/withdraw-edition.ts";
import { addComment, openThread } from "#server/threads/threads.ts";
import { writeGoodClass } from "#tests/support/good-class.ts";
import { must, openStudio, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";

let s: PlanStudio;
beforeEach(() => {
  s = openStudio();
});
afterEach(() => s.stop());

const told = (who: Person) => must(listNotices(s.app, who)).notices;
const sentences = (who: Person) => told(who).map(({ sentence }) => sentence);
const plan = (owner = s.people.jonas, title = "Pull and press") =>
  must(createPlan(s.app, owner, { title, lengthSeconds: 600, roomId: ROOMS.harbour })).id;

describe("who is told", () => {
  test("[INV-30] a round: the leads of the offer; owner and writers of the return, the sign-off and the withdrawal", async () => {
    const { jonas, marta, ines, noor, petra, sam } = s.people;
    const id = plan();
    must(sharePlan(s.app, jonas, id, { userId: marta.id, on: true }));
    await writeGoodClass(s, planDoc(id), [jonas, marta]);
    must(await handIn(s.app, marta, id, "A private word"));
    must(await handBack(s.app, ines, id, { note: "Too fast" }));
    must(await handIn(s.app, jonas, id));
    const { hash } = must(await readForSignOff(s.app, ines, id));
    must(await signPlan(s.app, ines, id, { hash }));
    must(withdrawEdition(s.app, ines, { planId: id, number: 1 }, "A spring is worn"));
    expect(told(ines).map(({ sentence, path }) => [sentence, path])).toEqual([
      ["Jonas offered “Pull and press” for reading, round 2.", `/plans/${id}`],
      ["Marta offered “Pull and press” for reading.", `/plans/${id}`],
    ]);
    const round = [
      ["Ines withdrew edition 1 of “Pull and press”.", `/editions/${id}/1`],
      ["Ines signed off “Pull and press” as edition 1.", `/editions/${id}/1`],
      ["Ines returned “Pull and press” with notes.", `/plans/${id}`],
    ];
    for (const who of [jonas, marta]) {
      expect(told(who).map(({ sentence, path }) => [sentence, path])).toEqual(round);
    }
    for (const who of [noor, petra, sam]) expect(told(who)).toEqual([]);
  });

  test("a comment: the owner and whoever wrote in the thread, never who wrote it; its words are not in the notice", () => {
    const { jonas, marta, ines } = s.people;
    const id = plan();
    must(sharePlan(s.app, jonas, id, { userId: marta.id, on: true }));
    const thread = must(openThread(s.app, ines, id, { anchor: { kind: "plan" }, body: "Mind her left wrist" })).id;
    must(addComment(s.app, marta, thread, "Yes"));
    expect(told(jonas).map(({ sentence, path }) => [sentence, path])).toEqual([
      ["Marta commented on “Pull and press”.", `/plans/${id}#thread-${thread}`],
      ["Ines commented on “Pull and press”.", `/plans/${id}#thread-${thread}`],
    ]);
    expect(sentences(ines)).toEqual(["Marta commented on “Pull and press”."]);
    expect(told(marta)).toEqual([]);
    expect(JSON.stringify(s.db.raw.prepare("select * from notice").all())).not.toContain("wrist");
  });

  test("a plan that is taken back: the lead who reads it, and nobody else", async () => {
    const { jonas, marta, ines } = s.people;
    const id = plan();
    must(sharePlan(s.app, jonas, id, { userId: marta.id, on: true }));
    await writeGoodClass(s, planDoc(id), [jonas, marta]);
    must(await handIn(s.app, jonas, id));
    must(await takeBack(s.app, jonas, id));
    const offered = "Jonas offered “Pull and press” for reading.";
    expect(sentences(ines)).toEqual([offered]);
    must(await handIn(s.app, jonas, id));
    must(takeUp(s.app, ines, id, { on: true }));
    must(await takeBack(s.app, jonas, id));
    expect(sentences(ines)).toEqual([
      "Jonas took “Pull and press” back while you were reading it.",
      ...["Jonas offered “Pull and press” for reading, round 2.", offered],
    ]);
    expect(told(ines)[0]).toMatchObject({ kind: "taken-back", path: `/plans/${id}` });
    for (const who of [jonas, marta]) expect(told(who)).toEqual([]);
  });

  test("a refused act tells nobody", async () => {
    const id = plan();
    expect((await handBack(s.app, s.people.ines, id, { note: "Not offered" })).ok).toBe(false);
    expect((await handIn(s.app, s.people.noor, id)).ok).toBe(false);
    expect(s.db.raw.prepare("select count(*) as n from notice").get()).toEqual({ n: 0 });
  });
});

describe("what may still be read", () => {
  test("[INV-30] of a plan that is not shared any more nothing is said or counted, nor of a deleted one", () => {
    const { jonas, noor, ines } = s.people;
    const id = plan(jonas, "A secret title");
    must(sharePlan(s.app, jonas, id, { userId: noor.id, on: true }));
    const thread = must(openThread(s.app, noor, id, { anchor: { kind: "plan" }, body: "Look" })).id;
    must(addComment(s.app, ines, thread, "I did"));
    expect(sentences(noor)).toEqual(["Ines commented on “A secret title”."]);
    expect(countUnseen(s.app, noor)).toBe(1);
    must(sharePlan(s.app, jonas, id, { userId: noor.id, on: false }));
    expect(told(noor)).toEqual([]);
    expect(countUnseen(s.app, noor)).toBe(0);
    expect(countUnseen(s.app, jonas)).toBe(2);
    must(deletePlan(s.app, jonas, id));
    expect(countUnseen(s.app, jonas)).toBe(0);
    expect(told(jonas)).toEqual([]);
  });

  test("a lead who is made a coach reads no more of others' plans", async () => {
    const id = plan();
    await writeGoodClass(s, planDoc(id), [s.people.jonas, s.people.jonas]);
    must(await handIn(s.app, s.people.jonas, id));
    expect(countUnseen(s.app, s.people.ines)).toBe(1);
    setRoles(s.db, "ines", ["coach"]);
    expect(countUnseen(s.app, { ...s.people.ines, roles: ["coach"] })).toBe(0);
  });

  test("a new title and a name of somebody who has left are shown as they are now", async () => {
    const { jonas, ines } = s.people;
    const id = plan();
    await writeGoodClass(s, planDoc(id), [jonas, jonas]);
    must(await handIn(s.app, jonas, id));
    s.db.raw.prepare("update plan set title = ?").run("Two\nlines\u202e <b>");
    removeAccess(s.db, "jonas");
    expect(sentences(ines)).toEqual(["Jonas offered “Two lines <b>” for reading."]);
  });

  test("failed mails are for managers alone", () => {
    const mail = { kind: "mail-failed", planId: null, at: s.app.now(), data: { byId: null, mailId: "gone" } } as const;
    for (const userId of ["petra", "marta"]) insertNotice(s.db, { ...mail, userId });
    expect(told(s.people.petra)).toMatchObject([{ sentence: "A mail could not be sent.", path: "/studio#mail" }]);
    expect(told(s.people.marta)).toEqual([]);
  });
});

describe("seen", () => {
  const comment = (planId: string, at = s.app.now()) =>
    insertNotice(s.db, { userId: "jonas", at, kind: "comment", planId, data: { byId: "ines", threadId: "t" } });

  test("opening a plan marks its own notices, not those of another plan or another person", () => {
    const [one, two] = [plan(), plan()];
    comment(one);
    comment(two);
    insertNotice(s.db, { userId: "ines", at: s.app.now(), kind: "offered", planId: one, data: { byId: "jonas" } });
    seeNoticesOf(s.app, s.people.jonas, { planId: one });
    expect(told(s.people.jonas).map(({ seen }) => seen)).toEqual([false, true]);
    expect(countUnseen(s.app, s.people.ines)).toBe(1);
  });

  test("one act marks all that was on the page; what came since stays new", () => {
    const id = plan();
    comment(id);
    comment(id);
    const upTo = told(s.people.jonas)[0]?.id ?? 0;
    comment(id);
    expect(must(seeAllNotices(s.app, s.people.jonas, { upTo }))).toEqual({ unseen: 1 });
    expect(told(s.people.jonas).map(({ seen }) => seen)).toEqual([false, true, true]);
  });

  test("the list is paged, the newest first, without a gap and without those that are not theirs", () => {
    const [mine, others] = [plan(), plan(s.people.marta)];
    for (let i = 0; i < 240; i++) comment(i % 2 === 0 ? mine : others, s.app.now() + i);
    const ids: number[] = [];
    let before: number | undefined;
    for (let page = 0; page < 10; page++) {
      const { notices, older } = must(listNotices(s.app, s.people.jonas, before));
      ids.push(...notices.map(({ id }) => id));
      if (older === null) break;
      before = older;
    }
    expect(ids).toHaveLength(120);
    expect(ids).toEqual([...ids].sort((a, b) => b - a));
  });

  test("nobody signed in and no device has a list", () => {
    expect(listNotices(s.app, null)).toMatchObject({ ok: false, error: { status: 401 } });
    expect(listNotices(s.app, { kind: "device", id: "d", roomId: "r" })).toMatchObject({ error: { status: 403 } });
  });
});

describe("choices", () => {
  test("until somebody chooses, usual ones are proposed, of their roles alone", () => {
    expect(noticeChoiceOf(s.app, s.people.ines)).toMatchObject({ chosen: false, kinds: { offered: "digest" } });
    expect(Object.keys(noticeChoiceOf(s.app, s.people.jonas).kinds)).not.toContain("offered");
    expect(noticeChoiceOf(s.app, s.people.sam).kinds).toEqual({});
    expect(noticeChoiceOf(s.app, s.people.petra).kinds).toEqual({
      "month-signed": "digest",
      "backup-failed": "at-once",
    });
  });

  test("are kept, and what is none is refused with a sentence", () => {
    const chosen = { digestAt: null, timeZone: "Asia/Kathmandu", kinds: { comment: "off" } } as const;
    must(chooseNotices(s.app, s.people.jonas, noticeChoiceSchema.parse(chosen)));
    expect(noticeChoiceOf(s.app, s.people.jonas)).toMatchObject({
      ...{ chosen: true, digestAt: null, timeZone: "Asia/Kathmandu" },
      kinds: { comment: "off", returned: "at-once" },
    });
    const says = (change: object) => noticeChoiceSchema.safeParse({ ...chosen, ...change }).error?.issues[0]?.message;
    expect(says({ digestAt: "25:00" })).toContain("such as 07:30");
    expect(says({ timeZone: "Port/Ellery" })).toContain("Choose one from the list");
    expect(says({ kinds: { gossip: "off" } })).toBeDefined();
    expect(says({ kinds: { comment: "sometimes" } })).toBeDefined();
  });
});
