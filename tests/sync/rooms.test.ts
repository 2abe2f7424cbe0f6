/** What commands ask of the live documents: create, read, change, announce; loading once, folding, letting go. */
import { afterEach, beforeEach, expect, test } from "vitest";
import * as Y from "yjs";
import { readStoredDoc } from "#db/repos/doc-log-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import { planParts } from "#lib/doc/layout.ts";
import { readItems } from "#lib/doc/read.ts";
import { eventually } from "#tests/support/eventually.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { SMALL_PLAN, startSyncServer, type TestServer } from "#tests/support/sync-server.ts";

let server: TestServer;
beforeEach(async () => {
  server = await startSyncServer({ limits: { idleMs: 40, compactRows: 20, compactQuietMs: 30 } });
  return () => server.stop();
});
const name = { kind: "plan", key: "r" } as const;
const page = (user = "ines", key = "r") =>
  new RawClient(server.url, { kind: "plan", key }, { cookie: server.host.signIn(user) });
const titleOf = (doc: Y.Doc) => planParts(doc).title.toString();
const stored = () => readStoredDoc(server.db, "plan/r");
afterEach(() => expect(server.log.filter((line) => line.level === "error")).toEqual([]));

test("create joins the caller's transaction: a rollback leaves nothing; twice is refused", () => {
  const doc = createPlanDoc(SMALL_PLAN, { carry: true });
  expect(() =>
    inTransaction(server.db, () => {
      server.rooms.create(name, doc, "u");
      throw new Error("the rest of the command failed");
    }),
  ).toThrow("the rest");
  expect(server.rooms.generation(name)).toBeUndefined();
  server.rooms.create(name, doc, "u");
  expect(() => server.rooms.create(name, doc, "u")).toThrow(/UNIQUE/);
  expect(server.rooms.withDoc(name, readItems).map((item) => item.id)).toEqual(["a", "rest", "b"]);
});

test("reading a document opens no room and writes nothing", () => {
  server.addPlan("r");
  expect(server.rooms.withDoc(name, titleOf)).toBe("Pull and press");
  expect(server.rooms.health().rooms).toBe(0);
  expect(stored()?.rows.length).toBe(1);
  expect(() => server.rooms.withDoc({ kind: "plan", key: "none" }, titleOf)).toThrow(/no document/);
  expect(server.rooms.withDoc({ kind: "month", key: "2031-01" }, (doc) => doc.share.size)).toBeGreaterThan(0);
  expect(server.rooms.generation({ kind: "month", key: "2031-01" })).toBeUndefined();
  expect(() => server.rooms.withDoc(name, async () => 1)).toThrow(/promise/);
});

test("a change by the server is on disk before it is heard, in the name of its actor", async () => {
  server.addPlan("r");
  const client = await page().synced();
  const result = server.rooms.transact(name, "lead", (doc) => {
    planParts(doc).title.insert(0, "Re");
    planParts(doc).title.insert(2, "vised ");
    return "done";
  });
  expect(result).toBe("done");
  expect(server.db.raw.prepare("select actor_id from doc_update order by seq desc").pluck().get()).toBe("lead");
  await eventually("the page hears", () => titleOf(client.doc) === "Revised Pull and press");
  expect(client.heard.filter((h) => h.kind === "update").length).toBe(1);
  client.end();
});

test("a change by the server that throws, or returns a promise, has not happened", async () => {
  server.addPlan("r");
  const client = await page().synced();
  const fails = () =>
    server.rooms.transact(name, "lead", (doc) => {
      planParts(doc).title.insert(0, "half ");
      throw new Error("changed its mind");
    });
  expect(fails).toThrow("changed its mind");
  expect(() => server.rooms.transact(name, "lead", async (doc) => planParts(doc).title.insert(0, "x"))).toThrow(
    /promise/,
  );
  expect(() =>
    inTransaction(server.db, () => server.rooms.transact(name, "lead", (doc) => planParts(doc).title.insert(0, "x"))),
  ).toThrow(/inside a database transaction/);
  expect(server.rooms.withDoc(name, titleOf)).toBe("Pull and press");
  client.edit((doc) => planParts(doc).title.insert(0, "Still "));
  await client.saved();
  expect(server.rooms.withDoc(name, titleOf)).toBe("Still Pull and press");
  client.end();
});

test("a change by the server builds on what was typed in the same turn", async () => {
  server.addPlan("r");
  const client = await page().synced();
  client.edit((doc) => planParts(doc).title.insert(0, "A "));
  await client.saved();
  server.rooms.transact(name, "lead", (doc) => planParts(doc).title.insert(0, "B "));
  await eventually("both", () => titleOf(client.doc) === "B A Pull and press");
  client.end();
});

test("news reaches everybody in the room, and nobody elsewhere", async () => {
  server.addPlan("r");
  server.addPlan("other");
  const [a, b, c] = await Promise.all([page("ines").synced(), page("marta").synced(), page("sam", "other").synced()]);
  server.rooms.announce(name, { t: "threads", threads: [] });
  await eventually("both hear", () => a.newsOf("threads").length + b.newsOf("threads").length === 2);
  expect(c.newsOf("threads")).toEqual([]);
  server.rooms.announce({ kind: "plan", key: "nobody-there" }, { t: "threads", threads: [] });
  for (const client of [a, b, c]) client.end();
});

test("a page that joins hears the news the host has for it", async () => {
  server.addPlan("r");
  server.host.news = [{ t: "threads", threads: [] }];
  const client = await page().synced();
  expect(client.newsOf("threads")).toEqual([{ t: "threads", threads: [] }]);
  client.end();
});

test("a burst of edits makes one call after it, with all of it; a throwing one costs nothing else", async () => {
  server.addPlan("r");
  const client = await page().synced();
  const started = performance.now();
  for (let i = 0; i < 30; i++) client.edit((doc) => planParts(doc).notes.insert(0, "x"));
  await client.saved();
  await eventually("the call", () => server.host.afterChange.length > 0);
  // One, and one more for every half second that a busy machine took over it.
  expect(server.host.afterChange.length).toBeLessThanOrEqual(1 + Math.floor((performance.now() - started) / 500));
  server.host.onAfterChange = () => {
    throw new Error("a rule crashed");
  };
  client.edit((doc) => planParts(doc).notes.insert(0, "y"));
  await client.saved();
  await eventually("it is logged", () => server.log.some((l) => l.message === "the follow-up work of a change failed"));
  client.edit((doc) => planParts(doc).notes.insert(0, "z"));
  await client.saved();
  server.log.length = 0;
  client.end();
});

test("typing without a pause still makes calls, at least every half second", async () => {
  server.addPlan("r");
  const client = await page().synced();
  const typing = setInterval(() => client.edit((doc) => planParts(doc).notes.insert(0, "x")), 20);
  await eventually("two calls", () => server.host.afterChange.length >= 2);
  clearInterval(typing);
  client.end();
});

test("pages that open one document at once share one room, which goes when they have gone, folded", async () => {
  server.addPlan("r");
  const clients = await Promise.all(["ines", "marta", "jonas"].map((user) => page(user).synced()));
  expect(server.rooms.health().rooms).toBe(1);
  clients[0]?.edit((doc) => planParts(doc).notes.insert(0, "folded"));
  await clients[0]?.saved();
  for (const client of clients) client.end();
  await eventually("the room goes", () => server.rooms.health().rooms === 0);
  expect(stored()?.snapshots.length).toBe(1);
  const again = await page().synced();
  expect(planParts(again.doc).notes.toString()).toBe("folded");
  again.end();
});

test("a page that comes back before the room goes keeps it", async () => {
  server.addPlan("r");
  const first = await page().synced();
  first.end();
  await eventually("it left", () => server.rooms.health().connections === 0);
  const second = await page().synced();
  server.addPlan("other");
  const passing = await page("marta", "other").synced();
  passing.end();
  // A room emptied later has had its time: so has this one.
  await eventually("the other room goes", () => server.rooms.health().rooms === 1);
  expect(server.rooms.health().connections).toBe(1);
  second.edit((doc) => planParts(doc).notes.insert(0, "kept"));
  await second.saved();
  second.end();
});

test("the log is folded in a pause; two snapshots are kept, and the rows since the older one", async () => {
  server.addPlan("r");
  const client = await page().synced();
  for (let round = 1; round <= 3; round++) {
    const before = stored()?.snapshots[0]?.seq ?? 0;
    for (let i = 0; i < 25; i++) {
      client.edit((doc) => planParts(doc).notes.insert(0, "w"));
      await client.saved();
    }
    await eventually("it is folded", () => (stored()?.snapshots[0]?.seq ?? 0) > before);
  }
  const now = stored();
  const [newest, older] = now?.snapshots ?? [];
  expect(now?.snapshots.length).toBe(2);
  const rows = server.db.raw.prepare<[], number>("select min(seq) from doc_update").pluck().get();
  expect(rows).toBeGreaterThan(older?.seq ?? 0);
  for (const start of [newest, older]) {
    const rebuilt = new Y.Doc();
    if (start) Y.applyUpdate(rebuilt, start.bytes);
    for (const row of now?.rows ?? []) if (row.seq > (start?.seq ?? 0)) Y.applyUpdate(rebuilt, row.bytes);
    expect(planParts(rebuilt).notes.toString()).toBe("w".repeat(75));
  }
  client.end();
});

test("everything that starts stops: sockets, rooms, timers", async () => {
  const timers = () => process.getActiveResourcesInfo().filter((kind) => kind === "Timeout").length;
  server.addPlan("r");
  const before = timers();
  const client = await page().synced();
  client.edit((doc) => planParts(doc).notes.insert(0, "last words"));
  await client.saved();
  expect(await server.halt()).toEqual([]);
  expect(await client.closed()).toBe(4505);
  expect(server.rooms.health()).toMatchObject({ rooms: 0, connections: 0, failing: [] });
  await eventually("timers are back to where they were", () => timers() <= before);
  client.end();
});
