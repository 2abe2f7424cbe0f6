/** A plan's page that is sent the document with it: it can be used before its socket is open, and nothing about saving changes. */
import { afterEach, beforeEach, expect, test } from "vitest";
import * as Y from "yjs";
import { PLAN_DOC_VERSION } from "#lib/doc/layout.ts";
import { setHead } from "#lib/doc/write.ts";
import type { News } from "#lib/protocol/messages.ts";
import type { DocStart } from "#server/plans/plan-start.ts";
import { type DocPages, docPages, reaches } from "#tests/support/doc-pages.ts";
import { eventually } from "#tests/support/eventually.ts";

let pages: DocPages;
beforeEach(async () => {
  pages = await docPages();
  pages.server.addPlan("p");
});
afterEach(() => pages.stop());

const onServer = <T>(read: (doc: Y.Doc) => T): T => pages.server.rooms.withDoc({ kind: "plan", key: "p" }, read);
const minutesOnServer = () => onServer((doc) => doc.getMap("head").get("lengthSeconds"));
const startNow = (more: Partial<DocStart> = {}): DocStart => ({
  ...{ bytes: onServer((doc) => Y.encodeStateAsUpdate(doc)), version: PLAN_DOC_VERSION },
  ...more,
});

test("it can be used at once, says that it is opening, and is saved when the server says so", async () => {
  const { session } = pages.openPlan("ines", { start: startNow() });
  const { ready, plan, writes, saveState } = session.getSnapshot();
  expect({ ready, writes, saveState }).toEqual({ ready: true, writes: true, saveState: "opening" });
  expect(plan.items.length).toBeGreaterThan(0);
  expect(session.getSnapshot().canUndo).toBe(false);
  await reaches({ session, edge: pages.edgeOf("ines", {}) }, "saved");
});

test("what is written before the socket is open arrives, with what others wrote since the page was made", async () => {
  const start = startNow();
  const other = pages.openPlan("marta", { straight: true });
  await reaches(other, "saved");
  other.session.act((w) => setHead(w, "openingSeconds", 77));
  await reaches(other, "saved");
  const one = pages.openPlan("ines", { start });
  expect(one.session.act((w) => setHead(w, "lengthSeconds", 905))).toBe(true);
  expect(one.session.saveState).not.toBe("saved");
  await reaches(one, "saved");
  expect(minutesOnServer()).toBe(905);
  await eventually("it has the other's", () => one.session.getSnapshot().plan.openingSeconds === 77);
});

test("without a connection it says that it is offline, and its words are kept for the next page", async () => {
  const kept = new Map<string, Uint8Array>();
  const start = startNow();
  pages.line.die();
  const one = pages.openPlan("ines", { start, kept });
  expect(one.session.saveState).toBe("opening");
  one.edge.tellNetwork();
  await reaches(one, "offline");
  one.session.act((w) => setHead(w, "lengthSeconds", 910));
  one.session.end();
  const next = pages.openPlan("ines", { kept, straight: true });
  await reaches(next, "saved");
  expect(minutesOnServer()).toBe(910);
});

test("a document of another version is left to the server", () => {
  for (const version of [PLAN_DOC_VERSION - 1, PLAN_DOC_VERSION + 1]) {
    const { session } = pages.openPlan("ines", { start: startNow({ version }) });
    expect(session.getSnapshot().ready).toBe(false);
    expect(session.act((w) => setHead(w, "lengthSeconds", 905))).toBe(false);
  }
});

test("it is drawn once its news are known: those that came with it, those of joining, or none where there is no server", async () => {
  const news: News[] = [
    { t: "rights", writes: false, comments: true },
    { t: "studio", mark: "m" },
  ];
  const one = pages.openPlan("ines", { start: startNow({ news: JSON.stringify(news) }) }).session;
  expect(one.canBeDrawn(one.getSnapshot())).toBe(true);
  // Rights are the server's word over the socket, never a page's.
  expect(one.getSnapshot().rights.writes).toBe(true);
  pages.line.die();
  const two = pages.openPlan("ines", { start: startNow() });
  expect(two.session.canBeDrawn(two.session.getSnapshot())).toBe(false);
  two.edge.tellNetwork();
  await reaches(two, "offline");
  expect(two.session.canBeDrawn(two.session.getSnapshot())).toBe(true);
  pages.line.live();
  two.edge.tellNetwork();
  await reaches(two, "saved");
  expect(two.session.canBeDrawn(two.session.getSnapshot())).toBe(true);
});
