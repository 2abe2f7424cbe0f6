/** The whole life of a plan through the commands, with the real database and the real live documents. */

import { afterEach, beforeEach, expect, test } from "vitest";
import { readEdition } from "#db/repos/edition-repo.ts";
import { listPlanEvents } from "#db/repos/event-repo.ts";
import { putMove } from "#db/repos/move-repo.ts";
import { readPlanAuthors, readPlanRow } from "#db/repos/plan-repo.ts";
import { contentHash, sha256Hex } from "#lib/canonical/canonical.ts";
import { verifyCard } from "#lib/card/card.ts";
import { labelOf, readItems } from "#lib/doc/read.ts";
import { setItemField, setText } from "#lib/doc/write.ts";
import type { DocName } from "#lib/protocol/messages.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { editionFile, listPlanEditions } from "#server/editions/editions.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { exportPlan } from "#server/plans/export-plan.ts";
import { listPlans } from "#server/plans/list-plans.ts";
import { sharePlan } from "#server/plans/share-plan.ts";
import { handBack } from "#server/sign-off/hand-back.ts";
import { handIn } from "#server/sign-off/hand-in.ts";
import { readForSignOff } from "#server/sign-off/read-for-sign-off.ts";
import { signPlan } from "#server/sign-off/sign-plan.ts";
import { addComment, openThread, settlePlanThread } from "#server/threads/threads.ts";
import { writeGoodClass } from "../support/good-class.ts";
import { MOVES, must, openStudio, outcome, type PlanStudio, ROOMS } from "../support/plan-studio.ts";

let s: PlanStudio;
beforeEach(() => {
  s = openStudio();
});
afterEach(() => s.stop());

test("created, written by two, offered for reading, returned with notes, fixed, signed, written on, signed again", async () => {
  const { app, people } = s;
  const { jonas, marta, ines } = people;

  // Jonas begins and shares with Marta; both write.
  const { id } = must(createPlan(app, jonas, { title: "Pull and press", lengthSeconds: 600, roomId: ROOMS.harbour }));
  const doc: DocName = planDoc(id);
  expect(app.documents.withDoc(doc, readItems)).toMatchObject([{ kind: "heading", title: "Warm-up" }]);
  expect(must(sharePlan(app, jonas, id, { userId: marta.id, on: true }))).toEqual({ shared: true });
  await writeGoodClass(s, doc, [jonas, marta]);
  expect(readPlanAuthors(s.db, id)).toEqual([jonas.id, marta.id]);
  expect((await s.findings(id)).filter((f) => f.level === "must")).toEqual([]);

  // Offered for reading: it stands first on the lead's desk.
  s.advance(1000);
  expect(must(await handIn(app, jonas, id, "My first one"))).toEqual({ mustFix: 0 });
  expect(s.last(doc, "state")?.state).toMatchObject({ state: "handed-in", handedInBy: "Jonas", note: "My first one" });
  const desk = must(await listPlans(app, ines)).plans[0];
  expect(desk).toMatchObject({ id, state: "handed-in", handedIn: { byName: "Jonas", mustFix: 0 } });

  // Ines comments, which stops her from signing, and hands back.
  const item = app.documents.withDoc(doc, readItems).find((i) => i.kind === "move");
  const anchor = { kind: "item" as const, itemId: item?.id ?? "" };
  const thread = must(openThread(app, ines, id, { anchor, body: "Slower here, please" }));
  const first = must(await readForSignOff(app, ines, id));
  expect(first.blockers.map((b) => b.code)).toEqual(["open-threads"]);
  expect(outcome(await signPlan(app, ines, id, { hash: first.hash }))).toBe("open-threads");
  must(await handBack(app, ines, id, { note: "See the thread" }));
  expect(s.last(doc, "state")?.state).toMatchObject({ state: "handed-back", note: "See the thread", edition: 0 });

  // Jonas fixes it, answers, hands in again; what a lead asked for a lead settles.
  await s.write(doc, jonas, (w) => {
    const label = labelOf(w.doc, "h1");
    if (label) setText(w, label, "Warm-up, slowly");
  });
  must(addComment(app, jonas, thread.id, "Done"));
  expect(outcome(settlePlanThread(app, jonas, thread.id, true))).toBe("for-a-lead");
  must(settlePlanThread(app, ines, thread.id, true));
  expect(s.last(doc, "thread")?.thread).toMatchObject({
    settled: true,
    comments: [{ authorName: "Ines" }, { authorName: "Jonas", body: "Done" }],
  });
  must(await handIn(app, jonas, id));

  // What Ines read before is not what she may sign now; she is told what changed.
  const stale = await signPlan(app, ines, id, { hash: first.hash });
  expect(stale).toMatchObject({ ok: false, error: { code: "changed-since-read", status: 409 } });
  const second = must(await readForSignOff(app, ines, id));
  expect(second.changedSince?.join(" ")).toContain("Warm-up, slowly");
  expect(second.blockers).toEqual([]);
  s.advance(1000);
  expect(must(await signPlan(app, ines, id, { hash: second.hash, note: "Good work" }))).toEqual({
    edition: 1,
    hash: second.hash,
  });
  expect(s.last(doc, "state")?.state).toMatchObject({ state: "signed-off", edition: 1, editionHash: second.hash });

  // The edition is exactly what was read, and its card verifies with the studio's public key alone.
  const one = readEdition(s.db, id, 1);
  expect(sha256Hex(one?.planJson ?? "")).toBe(second.hash);
  expect(contentHash(second.plan)).toBe(second.hash);
  expect(verifyCard(one?.card, app.keys.publicKey, app.now())).toMatchObject({ ok: true });
  expect(one?.card.card).toMatchObject({ studio: { name: "Tholepin Strength" }, room: { id: "harbour" } });

  // A change of the library leaves the plan signed, even when the document is touched without saying anything new.
  putMove(s.db, "kneeling-row", { ...MOVES.row, name: "Row on the knees" }, app.now() + 1);
  await s.write(doc, marta, (w) => w.doc.getMap("head").set("of-a-later-version", 1));
  expect(contentHash(must(exportPlan(app, marta, id)))).not.toBe(second.hash);
  expect(readPlanRow(s.db, id)?.state).toBe("signed-off");

  // Writing on makes it a plan in writing again; the edition stays.
  await s.write(doc, marta, (w) => setItemField(w, "m1", "locked", true));
  expect(readPlanRow(s.db, id)?.state).toBe("in-writing");
  expect(s.last(doc, "state")?.state).toMatchObject({ state: "in-writing", edition: 1, editionHash: second.hash });
  must(await handIn(app, marta, id));
  const third = must(await readForSignOff(app, ines, id));
  expect(third).toMatchObject({ nextEdition: 2 });
  expect(must(await signPlan(app, ines, id, { hash: third.hash })).edition).toBe(2);
  expect(must(listPlanEditions(app, marta, id)).editions.map((e) => e.number)).toEqual([2, 1]);
  expect(sha256Hex(must(editionFile(app, marta, { planId: id, number: 1, form: "plan" })).text)).toBe(second.hash);

  expect(listPlanEvents(s.db, id).map((e) => `${e.kind} ${e.actorId}`)).toEqual([
    "created jonas",
    "shared jonas",
    "handed-in jonas",
    "handed-back ines",
    "handed-in jonas",
    "signed-off ines",
    "written-on marta",
    "handed-in marta",
    "signed-off ines",
  ]);
});
