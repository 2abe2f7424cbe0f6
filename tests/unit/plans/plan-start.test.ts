/** What a plan's page is sent to begin with: the very document, and findings only where they are of it. */
import { afterEach, beforeEach, expect, test } from "vitest";
import * as Y from "yjs";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import { readPlan } from "#lib/doc/read.ts";
import { setHead } from "#lib/doc/write.ts";
import type { Anchor } from "#lib/protocol/messages.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { readStart } from "#server/plans/plan-start.ts";
import { planStudio } from "#server/studio-data/plan-studio.ts";
import { openThread } from "#server/threads/threads.ts";
import { writeGoodClass } from "#tests/support/good-class.ts";
import { must, openStudio, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";

let s: PlanStudio;
let id = "";
beforeEach(async () => {
  s = openStudio();
  const { jonas } = s.people;
  id = must(createPlan(s.app, jonas, { title: "Pull and press", lengthSeconds: 600, roomId: ROOMS.harbour })).id;
  await writeGoodClass(s, planDoc(id), [jonas, jonas]);
});
afterEach(() => s.stop());

const studio = () => planStudio(s.app.db, ROOMS.harbour);
const start = () => must(readStart(s.app, s.people.jonas, id, studio().mark)).doc;

test("the document is all of it, and the news are those of joining", () => {
  const sent = start();
  const doc = new Y.Doc();
  Y.applyUpdate(doc, sent?.bytes ?? new Uint8Array());
  s.app.documents.withDoc(planDoc(id), (live) =>
    expect(Y.equalSnapshots(Y.snapshot(doc), Y.snapshot(live))).toBe(true),
  );
  const kinds = JSON.parse(sent?.news ?? "[]").map(({ t }: { t: string }) => t);
  expect(kinds).toEqual(expect.arrayContaining(["state", "threads", "accepted", "proposals", "studio"]));
});

test("of very many threads the page is sent how many are open at each plate, and all other news", () => {
  const { app, people } = s;
  const item = s.app.documents.withDoc(planDoc(id), (doc) => readPlan(doc, studio()).items[0]?.id) ?? "";
  for (let i = 0; i < 60; i++) {
    const anchor: Anchor = i % 2 === 0 ? { kind: "item", itemId: item } : { kind: "plan" };
    must(openThread(app, people.ines, id, { anchor, body: `${i}: ${"slower, ".repeat(120)}` }));
  }
  const { news = "[]", openThreads } = start() ?? {};
  expect(JSON.parse(news).map(({ t }: { t: string }) => t)).toEqual(expect.not.arrayContaining(["threads"]));
  expect(JSON.parse(news).length).toBeGreaterThan(3);
  expect(openThreads).toEqual({ [item]: 30 });
});

test("findings come once they are known, are those of the document, and go with the first change", async () => {
  s.app.documents.transact(planDoc(id), "jonas", (doc) => setHead({ doc, origin: "t" }, "lengthSeconds", 3000));
  expect(start()?.findings).toBeUndefined();
  await s.app.checks.now(id);
  const found = start()?.findings ?? [];
  expect(found.length).toBeGreaterThan(0);
  const plan = s.app.documents.withDoc(planDoc(id), (doc) => readPlan(doc, studio()));
  expect(found).toEqual(checkPlan(plan).findings);
  expect(must(readStart(s.app, s.people.jonas, id, "another studio")).doc?.findings).toBeUndefined();
  s.app.documents.transact(planDoc(id), "jonas", (doc) => setHead({ doc, origin: "t" }, "lengthSeconds", 3100));
  expect(start()?.findings).toBeUndefined();
});
